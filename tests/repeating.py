"""How many made-up cases tests look at: few enough to be run all day. `TIMES=5 python3 run.py test` looks at more."""

import os

TIMES = int(os.environ.get("TIMES", "1"))
"""Random tests look at so many times as many cases."""
