"""The commands on whole days: reports, tables, the season book, and what they say about what they refuse."""

from __future__ import annotations

import csv
import json
import re
import sqlite3
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from generator.command_line.__main__ import main
from generator.pipeline import recording
from generator.pipeline.order import HERE, Order
from generator.pipeline.progress import Progress
from generator.pipeline.recording import Gathering, gather, write_records
from generator.records.days import RecordBook
from generator.records.merging import merge
from generator.records.season import bring_up_to_date, years
from generator.records.taking import take_file, take_text
from tests.product import product_reading, product_workbook
from tests.records.samples import DEMO, NOON, entry, file_of

RUN = "2026-07-18-demo1"


@pytest.fixture(scope="module")
def gathering() -> Gathering:
    return gather(Order(HERE / "content", HERE / "build"), DEMO)


@pytest.fixture(scope="module")
def out(gathering: Gathering, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("records")
    with Progress() as say:
        write_records(gathering, folder, say)
    return folder


@pytest.fixture(scope="module")
def report(out: Path) -> str:
    with pdfplumber.open(out / f"{RUN}.pdf") as paper:
        return "\n".join(page.extract_text() for page in paper.pages).replace("\u00a0", " ")


@pytest.mark.parametrize(
    "line",
    [
        "Record of 2026-07-18",
        "Birds killed 59 birds 60 birds −2%",
        "Lost, dead on arrival or condemned 3%",  # 2 of 60
        "Birds unaccounted for 0 birds",  # 60 - 1 - 1 - 58
        "Dressed share of the live weight 74% 75% −1%",  # 250.4 lb / 58 over 349 lb / 60
        "Ice put in 350.0 lb (158.8 kg)",
        "Hours of work, all people 34.0 h",  # 6 people from 5:50 to 11:30
        "Birds killed 59 birds 1 1000 birds 941 birds",
        '=HYPERLINK("no") and <script>alert(1)</script> stay plain text.',
        "The clock of phone bendemo0phon was ahead of that of anademo0phon by 1:55.",
        "Put it away. The second one",
        "Turned the flame down and",
        "now 145 °F (63 °C)",
        "Invented for show.",
    ],
)
def test_the_report_says(report: str, line: str) -> None:
    assert line in report


def test_work_for_one_bird_is_told_against_the_plan(report: str) -> None:
    """34 hours of work over 58 packed."""
    assert "Work for one bird 35.2 min" in report


def test_times_temperatures_and_limits_stand_together(report: str) -> None:
    assert "7:50 Scald water 153 °F (67 °C)" in report
    assert "TOO HIGH" in report
    assert "by 13:01" in report  # six hours after the first bird of the lot was cut at 7:01


def test_the_table_has_every_entry_once(out: Path) -> None:
    with (out / f"{RUN}.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == len({row["id"] for row in rows}) == 67
    slip = next(row for row in rows if row["written"] == "104 °F")
    assert (slip["counts"], slip["verdict"], slip["time"]) == ("no", "low", "2026-07-18 08:10:00")


def test_the_merged_record_is_a_record_again(out: Path, book: RecordBook) -> None:
    taken = take_file(out / f"{RUN}.json", book.ranges)
    assert taken.faults == []
    assert merge(taken.entries) == merge(*(take_file(path, book.ranges).entries for path in DEMO))


def test_the_season_book_counts_each_day_once_however_often_it_comes(tmp_path: Path, book: RecordBook) -> None:
    first = [entry(n, kind="count", of="birds_killed", value=20, written="20") for n in (1, 2)]
    more = [entry(n, kind="count", of="birds_killed", value=30, written="30", run="2026-08-01-bbb") for n in (3, 4)]
    later = [entry(5, kind="count", of="birds_killed", value=7, written="7", run="2027-05-01-ccc")]
    season = tmp_path / "season.sqlite"
    for part in (first[:1], more, first, first, later, more):
        days = bring_up_to_date(season, book, part)
    again = tmp_path / "again.sqlite"
    fresh = bring_up_to_date(again, book, [*later, *more, *first])
    for path, known in ((season, days), (again, fresh)):
        sums = {each.year: each for each in years(path, book, known) if each.tally == "birds_killed_tally"}
        assert {year: (each.days, each.value) for year, each in sums.items()} == {"2026": (2, 100), "2027": (1, 7)}
        assert (sums["2026"].limit, sums["2026"].left) == (1000, 900)  # the demo farm's rules: 1,000 birds in a year
    with sqlite3.connect(season) as one, sqlite3.connect(again) as other:
        rows = "SELECT * FROM entries ORDER BY canonical"
        assert one.execute(rows).fetchall() == other.execute(rows).fetchall()
    one.close()
    other.close()


def test_what_was_done_while_there_still_was_time_stands_in_the_report(book: RecordBook) -> None:
    limit: Any = {"high": 278, "by": NOON + 3_600_000}
    slow = entry(1, of="breast_reading", value=290, limit=limit)
    done = entry(2, kind="action", answers=slow["id"], text="Added ice and stirred.")
    on_the_way = entry(3, of="breast_reading", value=280, limit=limit)
    (day,) = book.days([slow, done, on_the_way])
    assert day.outside == [(slow, [done])]


def test_a_frozen_plan_of_other_content_is_used_as_far_as_it_goes(book: RecordBook) -> None:
    values = {"birds": 40, "no_longer_there": 5, "species": "dragon", "crew": 10_000, "yearly_bird_limit": 500}
    (day,) = book.days([entry(1, kind="plan", text="old", values=values)])
    assert (day.settings["birds"], day.settings["species"]) == (40, "broiler")
    assert day.settings["crew"] != 10_000
    assert day.plan["yearly_bird_limit"] == 500


@dataclass(frozen=True)
class Answer:
    returncode: int
    stdout: str
    stderr: str


Command = Callable[..., Answer]


@pytest.fixture
def command(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Command:
    monkeypatch.chdir(HERE)
    monkeypatch.setattr(recording, "open_content", lambda order: (product_reading(), product_workbook()))

    def run(*words: object) -> Answer:
        status = main([str(word) for word in words])
        said, complained = capsys.readouterr()
        steps = re.compile(r"^.* \.\.\.\n", re.MULTILINE)  # told only where the machine is slow
        return Answer(status, said, steps.sub("", complained))

    return run


def test_the_command_names_what_it_refuses_and_takes_the_rest(tmp_path: Path, command: Command) -> None:
    odd = {**entry(2), "color": "red"}
    remark = entry(3, kind="remark", text="日本語 ✓ #panic() \\")
    strange = entry(4, of="unheard_of", value=3, written="3 x")
    (tmp_path / "part.json").write_text(file_of(entry(1, of="air_reading", value=900), odd, remark, strange))
    (tmp_path / "cut.json").write_text(DEMO[0].read_text("utf-8")[:-100], "utf-8")
    (tmp_path / "new.json").write_text(file_of(version=99))
    names = [tmp_path / name for name in ("part.json", "cut.json", "new.json", "missing.json")]
    answer = command("records", *names, "--out", tmp_path / "out")
    assert answer.returncode == 1
    assert answer.stderr.splitlines() == [
        f"{names[0]}: Entry 1 was not taken: The reading cannot be: it lies outside all that is possible.",
        f"{names[0]}: Entry 2 was not taken: It has something that records do not have, in entry.",
        f"{names[1]}: The file is cut short, or no record at all. Send it again from the phone that has it.",
        f"{names[2]}: The record comes from a newer version of this site. Update this one first. "
        "Nothing was taken from it.",
        f"{names[3]}: no such file or directory",
        "    hint: name a record file",
        "",
        "5 problems.",
    ]
    made = json.loads((tmp_path / "out" / f"{RUN}.json").read_text("utf-8"))
    assert made["entries"] == [remark, strange]
    assert made["clock"] == NOON
    with pdfplumber.open(tmp_path / "out" / f"{RUN}.pdf") as paper:
        words = paper.pages[0].extract_text()
    assert "??? ? #panic()" in words
    assert words.count("?") == 4, "only what the font lacks"
    assert "`unheard_of` is not read on this farm" in words


def test_nothing_is_written_where_nothing_could_be_taken(tmp_path: Path, command: Command) -> None:
    (tmp_path / "no.json").write_text("[]")
    answer = command("records", tmp_path / "no.json", "--out", tmp_path / "out")
    assert (answer.returncode, answer.stdout) == (1, "")
    assert answer.stderr == f"{tmp_path / 'no.json'}: This is not a day's record. Nothing was taken from it.\n"
    assert not (tmp_path / "out").exists()


def test_learning_is_asked_for_by_name(command: Command) -> None:
    answer = command("learn", *DEMO, "--accept", "chill_leson", "--accept", "wash_lesson")
    assert answer.returncode == 1
    assert "planned 35%, learned 38.5 percent. Evidence: 1 of air_reading, 8 of heat_up_reading" in answer.stdout
    assert "there is no lesson `chill_leson`\n    hint: did you mean `chill_lesson`?" in answer.stderr
    assert "--accept wash_lesson: these records teach nothing for it" in answer.stderr


def test_a_season_book_that_is_something_else_is_left_alone(tmp_path: Path, command: Command) -> None:
    (tmp_path / "season.sqlite").write_text("my shopping list, and quite long at that")
    answer = command("records", *DEMO, "--out", tmp_path)
    assert answer.returncode == 1
    assert "the season book cannot be used: file is not a database" in answer.stderr
    assert (tmp_path / "season.sqlite").read_text().startswith("my shopping list")


def test_what_was_signed_on_a_date_stands_with_its_day_or_alone(gathering: Gathering) -> None:
    work = entry(1, of="scald_reading_taken")
    before = entry(2, kind="sign", of="knife", name="Ben", who="Ana", run="2026-07-18-training")
    idle = entry(3, kind="sign", of="knife", name="Cleo", who="Ana", run="2026-07-20-training")
    with_work, alone = gathering.book.days([work, before, idle])
    assert (with_work.run, alone.run) == ("2026-07-18-demo1", "2026-07-20-training")
    assert [each["id"] for each in with_work.standing] == [work["id"], before["id"]]
    assert [each["id"] for each in alone.standing] == [idle["id"]]


def test_signatures_that_come_later_stand_in_the_papers_of_their_day(tmp_path: Path, command: Command) -> None:
    signed = entry(2, kind="sign", of="knife", name="Ben", who="Ana", run=f"{RUN[:10]}-training")
    for number, one in enumerate((entry(1, kind="remark", text="Begun."), signed)):
        (tmp_path / f"{number}.json").write_text(file_of(one))
        assert command("records", tmp_path / f"{number}.json", "--out", tmp_path / "out").returncode == 0
    assert "Ben" in (tmp_path / "out" / f"{RUN}.csv").read_text("utf-8-sig")


def test_a_plan_frozen_with_words_for_numbers_is_computed_anew(gathering: Gathering) -> None:
    day = gathering.book.days([entry(1, kind="plan", values={"birds": "forty", "crew": 5}, text="odd")])[0]
    assert day.plan["birds"] == gathering.book.workbook.plan["birds"]
    assert day.plan["crew"] == 5


def test_counts_of_what_this_farm_does_not_count_are_added_up(tmp_path: Path, command: Command) -> None:
    three, five = (entry(n, kind="count", of="unheard_of", value=n, written=f"{n} x") for n in (3, 5))
    (tmp_path / "day.json").write_text(file_of(three, five))
    command("records", tmp_path / "day.json", "--out", tmp_path / "out")
    with pdfplumber.open(tmp_path / "out" / f"{RUN}.pdf") as paper:
        told = paper.pages[0].extract_text().replace("\u00a0", " ")
    assert re.search(r"unheard_of.* 8$", told, re.MULTILINE), told


def test_sixty_thousand_sound_entries_are_too_many_for_one_file() -> None:
    assert take_text(file_of(*[entry(1)] * 60_000), {}).faults[0][1].code == "too_many"
