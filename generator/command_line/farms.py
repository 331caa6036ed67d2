"""`farms`: the sites of many farms."""

from __future__ import annotations

from argparse import Namespace

from generator.command_line.findings import counted, report
from generator.pipeline.farms import build_farms, orders_of


def run(options: Namespace) -> int:
    """Says of each farm where its site is, or reports its problems; the status is 1 where a farm had any."""
    faulty = 0
    orders = orders_of(options.farms, options.content, options.into)
    for built in build_farms(orders):
        if built.problems:
            faulty += 1
            print(f"{built.order.own}: not built", flush=True)
            report(built.problems)
        else:
            print(f"{built.order.own}: {built.order.site} ({built.seconds:.1f} s)", flush=True)
    print(f"{counted(len(orders) - faulty, 'farm')} built" + (f", {faulty} not." if faulty else "."))
    return 1 if faulty else 0
