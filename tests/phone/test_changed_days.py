"""A day computed from the one before it is the day computed anew, whatever was changed in between."""

import random

import pytest

from generator.computing import Workbook
from tests.phone.conftest import Ask

CHAIN = """plans.reduce(({ before, same }, changes) => {
  const settings = settle(changes);
  const anew = compute(settings);
  const after = compute(settings, before);
  return { before: after, same: same && JSON.stringify(sorted(after)) === JSON.stringify(sorted(anew)) };
}, { same: true }).same"""
SORTED = "(({ values, refused, alerts }) => [Object.entries(values).sort(), Object.entries(refused).sort(), alerts])"


def _next(plan: dict[str, float | str], workbook: Workbook, chance: random.Random) -> dict[str, float | str]:
    """One to three more things changed, now and then one taken back or a choice made."""
    after = dict(plan)
    for name in chance.sample(list(workbook.givens.inputs), chance.randrange(1, 4)):
        given = workbook.givens.inputs[name]
        value = chance.choice([given.low, given.high, chance.uniform(given.low, given.high)])
        after[name] = float(round(value)) if given.whole else value
    if after and chance.random() < 0.3:
        del after[chance.choice(sorted(after))]
    if chance.random() < 0.3:
        choice = chance.choice(sorted(workbook.givens.options))
        after[choice] = chance.choice(sorted(workbook.givens.options[choice]))
    return after


@pytest.mark.parametrize("seed", range(12))
def test_what_stays_is_what_would_be_computed_again(ask: Ask, workbook: Workbook, seed: int) -> None:
    chance = random.Random(seed)
    plans: list[dict[str, float | str]] = [{}]
    for _ in range(25):
        plans.append(_next(plans[-1], workbook, chance))
    assert ask(f"((sorted) => {CHAIN})({SORTED})", plans=plans)


def test_only_what_comes_after_a_change_is_computed(ask: Ask) -> None:
    """Of b = 2 a, d = 2 c and e = 2 d, where a moves and c does not, only b is asked for again."""
    counted = """((asked) => {
      const steps = Object.fromEntries([['b', 'a'], ['d', 'c'], ['e', 'd']].map(([id, from]) => (
        [id, { formula: (v) => { asked.push(id); return 2 * v[from]; }, require: [] }])));
      const formulas = { steps, uses: { b: ['a'], d: ['c'], e: ['d'] }, watches: {} };
      const before = computeOn(formulas, { a: 1, c: 1 });
      const { values } = computeOn(formulas, { a: 5, c: 1 }, before);
      return { asked, values };
    })([])"""
    assert ask(counted) == {"asked": ["b", "d", "e", "b"], "values": {"a": 5, "b": 10, "c": 1, "d": 2, "e": 4}}
