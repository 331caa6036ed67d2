"""All rules in the order in which they are applied, and how pardons let a finding pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from generator.computing import Workbook
from generator.problems import Problem, did_you_mean
from generator.reading import Reading
from generator.rules.choices_are_used import choices_are_used
from generator.rules.citations_name_a_place import citations_name_a_place
from generator.rules.contacts_can_be_reached import contacts_can_be_reached
from generator.rules.danger_has_a_stop import danger_has_a_stop
from generator.rules.days_can_be_worked_out import days_can_be_worked_out
from generator.rules.drills_are_written_down import drills_are_written_down
from generator.rules.drills_can_be_worked_out import drills_can_be_worked_out
from generator.rules.drills_have_one_answer import drills_have_one_answer
from generator.rules.farm_figures_are_owned import farm_figures_are_owned
from generator.rules.hazards_are_guarded import hazards_are_guarded
from generator.rules.inputs_lie_in_range import inputs_lie_in_range
from generator.rules.inspection import Finding, Inspection
from generator.rules.key_points_have_reasons import key_points_have_reasons
from generator.rules.limits_are_logged import limits_are_logged
from generator.rules.limits_have_remedies import limits_have_remedies
from generator.rules.number_words_by_id import number_words_by_id
from generator.rules.numbers_by_id import numbers_by_id
from generator.rules.orders_differ import orders_differ
from generator.rules.own_figures_count import own_figures_count
from generator.rules.pages_have_a_place import pages_have_a_place
from generator.rules.parts_of_formulas_are_used import parts_of_formulas_are_used
from generator.rules.paths_lead_somewhere import paths_lead_somewhere
from generator.rules.pictures_are_drawn import pictures_are_drawn
from generator.rules.pictures_are_used import pictures_are_used
from generator.rules.plans_can_be_computed import plans_can_be_computed
from generator.rules.procedures_are_short import procedures_are_short
from generator.rules.quantities_are_used import quantities_are_used
from generator.rules.sources_are_cited import sources_are_cited
from generator.rules.steps_are_one_action import steps_are_one_action
from generator.rules.steps_are_short import steps_are_short
from generator.rules.steps_begin_with_a_verb import steps_begin_with_a_verb
from generator.rules.stops_are_logged import stops_are_logged
from generator.rules.stops_rest_on_a_source import stops_rest_on_a_source
from generator.rules.supplies_are_needed import supplies_are_needed
from generator.rules.terms_are_met import terms_are_met
from generator.rules.things_have_one_name import things_have_one_name
from generator.rules.timers_are_logged import timers_are_logged
from generator.rules.titles_hold_no_numbers import titles_hold_no_numbers
from generator.rules.tools_are_at_hand import tools_are_at_hand
from generator.rules.words_fit_in_drawings import words_fit_in_drawings

Rule = Callable[[Inspection], Iterable[Finding]]
"""A rule is a function; its name is what a pardon says, its docstring is its specification."""

RULES: tuple[Rule, ...] = (
    # where figures come from
    citations_name_a_place,
    sources_are_cited,
    farm_figures_are_owned,
    own_figures_count,
    stops_rest_on_a_source,
    # figures themselves
    inputs_lie_in_range,
    plans_can_be_computed,
    days_can_be_worked_out,
    numbers_by_id,
    number_words_by_id,
    titles_hold_no_numbers,
    # nothing stands about unused
    quantities_are_used,
    choices_are_used,
    parts_of_formulas_are_used,
    supplies_are_needed,
    tools_are_at_hand,
    terms_are_met,
    things_have_one_name,
    pictures_are_used,
    pictures_are_drawn,
    words_fit_in_drawings,
    # what is read at the station
    procedures_are_short,
    danger_has_a_stop,
    steps_begin_with_a_verb,
    steps_are_short,
    steps_are_one_action,
    hazards_are_guarded,
    key_points_have_reasons,
    limits_have_remedies,
    limits_are_logged,
    timers_are_logged,
    stops_are_logged,
    orders_differ,
    pages_have_a_place,
    contacts_can_be_reached,
    # what is taught
    drills_can_be_worked_out,
    drills_are_written_down,
    drills_have_one_answer,
    paths_lead_somewhere,
)


ABOUT_USE = {
    sources_are_cited,
    quantities_are_used,
    choices_are_used,
    parts_of_formulas_are_used,
    supplies_are_needed,
    terms_are_met,
    pictures_are_used,
}
"""What a farm's figures and words leave unused of the shared content is no fault of anybody's."""


def check_rules(reading: Reading, workbook: Workbook, farms_own: bool = False) -> list[Problem]:
    """Problems from all rules but for those pardoned; a pardon that pardons nothing is a problem too.

    With a farm's own folder laid over it, the shared content need not all be used.
    """
    inspection = Inspection(reading, workbook)
    pardons = {(pardon.rule, pardon.entry): name for name, pardon in reading.library.pardons.items()}
    needed: set[str] = set()
    problems: list[Problem] = []
    for rule in RULES:
        for finding in rule(inspection):
            pardon = pardons.get((rule.__name__, finding.entry))
            unused = rule in ABOUT_USE and reading.entries[finding.kind][finding.name].layer == "shared"
            if pardon is not None:
                needed.add(pardon)
            elif not (farms_own and unused):
                problems.append(finding.problem(reading))
    return sorted({*problems, *_idle_pardons(reading, needed)})


def _idle_pardons(reading: Reading, needed: set[str]) -> Iterable[Problem]:
    names = [rule.__name__ for rule in RULES]
    for name, pardon in reading.library.pardons.items():
        if pardon.rule not in names:
            hint = did_you_mean(pardon.rule, names, "rules: " + ", ".join(names))
            yield Problem(reading.place("pardons", name, "rule"), f"unknown rule `{pardon.rule}`", hint)
        elif name not in needed:
            fault = f"`{pardon.entry}` needs no pardon from `{pardon.rule}`"
            hint = "take the pardon out, or check its `entry`: kind/id"
            yield Problem(reading.place("pardons", name), fault, hint)
