"""The workflow that publishes: it may do what it needs and no more, and runs what the README says."""

import re

import yaml

from generator.command_line.options import read_options
from generator.pipeline.order import HERE

TEXT = (HERE / ".github/workflows/publish.yml").read_text(encoding="utf-8")
FLOW = yaml.safe_load(TEXT)
(JOB,) = FLOW["jobs"].values()
STEPS = JOB["steps"]


def test_it_may_read_and_publish_and_nothing_else() -> None:
    assert FLOW["permissions"] == {"contents": "read", "pages": "write", "id-token": "write"}
    assert "permissions" not in JOB
    assert FLOW[True] == {"push": {"branches": ["main"]}, "workflow_dispatch": {}}, "YAML 1.1 takes `on` for a truth"
    assert JOB["environment"]["name"] == "github-pages"


def test_each_action_is_pinned_to_the_host_s_own() -> None:
    actions = [step["uses"] for step in STEPS if "uses" in step]
    assert [re.sub("@.*", "", action) for action in actions] == [
        "actions/checkout",
        "actions/setup-python",
        "actions/upload-pages-artifact",
        "actions/deploy-pages",
    ]
    assert all(re.search(r"@[0-9a-f]{40}$", action) for action in actions), "a tag can be moved to other code"
    versions = [line for line in TEXT.splitlines() if re.search(r"uses: \S+ # v\d+\.\d+\.\d+$", line)]
    assert len(versions) == len(actions), "what a commit stands for is written behind it"


def test_its_commands_are_ours_and_in_order() -> None:
    """It tests, builds, publishes the folder that was built, and compares it where it stands, below a path too."""
    commands = [step["run"].removeprefix("python3 run.py ") for step in STEPS if "run" in step]
    spelled = [re.sub(r'"\$.*?"', "content/farms/demo", each).split() for each in commands[:2]]
    assert [read_options(each).command for each in spelled] == ["test", "build"]
    assert commands[2] == 'verify "${{ steps.published.outputs.page_url }}"'
    places = [place for place, step in enumerate(STEPS) if {"run", "with", "id"} & set(step)]
    assert places == sorted(places)
    upload = next(step for step in STEPS if "upload" in step.get("uses", ""))
    assert upload["with"] == {"path": "build/site"}
    assert (HERE / FLOW["env"]["FARM"] / "farm/farm.yml").is_file()
