"""Slopes of groups with t intervals of a pooled variance, by least squares.

Makes track_current.json: random groups of runs, x towards 1 for a run out and -1
for one back, y its speed; and for each group the slope and its 95 % interval by
one ordinary least squares with an intercept and a slope for each group.
Run in this folder: python3 track_current.py > track_current.json
"""

import json
import sys

import numpy as np
import statsmodels
import statsmodels.api as sm

rng = np.random.default_rng(20260214)


def group(runs):
    """A way out, a way back, and so many runs more."""
    sign = np.array([1, -1] + list(rng.choice([1, -1], runs - 2)))
    x = (sign * rng.uniform(0.87, 1, runs)).round(6)
    y = (rng.uniform(6, 14) + rng.normal(0, 1) * x + rng.normal(0, 0.2, runs)).round(6)
    return x, y


cases = []
for _ in range(200):
    groups = [group(rng.integers(2, 8)) for _ in range(rng.integers(1, 8))]
    if sum(len(x) - 2 for x, _ in groups) == 0:
        groups.append(group(4))
    which = np.repeat(np.arange(len(groups)), [len(x) for x, _ in groups])
    x = np.concatenate([g[0] for g in groups])
    y = np.concatenate([g[1] for g in groups])
    inside = (which[:, None] == np.arange(len(groups))).astype(float)
    fit = sm.OLS(y, np.hstack([inside, inside * x[:, None]])).fit()
    slopes = slice(len(groups), None)
    cases.append({"groups": [np.column_stack(g).tolist() for g in groups], "df": int(fit.df_resid),
                  "slope": fit.params[slopes].tolist(), "interval": fit.conf_int(0.05)[slopes].tolist()})
json.dump({"by": f"statsmodels {statsmodels.__version__}, numpy {np.__version__}", "cases": cases}, sys.stdout, separators=(",", ":"))
print()
