"""Makes separation.json: which rows of 200 random Poisson regressions run off.

Run in this folder: python3 separation.py
scipy 1.10.1 linprog: the most rows s_i <= 1 in total with X g = 0 where there
are events and X g >= s where there are none; a row is separated where s is 1.
"""
import json

import numpy as np
from scipy.optimize import linprog

rng = np.random.default_rng(19011633)


def one():
    n = rng.integers(5, 16)
    a, b = rng.integers(0, 3, n), rng.integers(0, 4, n)
    x = rng.integers(0, 5, n)
    design = [np.ones(n)] + [a == k for k in (1, 2)] + [b == k for k in (1, 2, 3)] + [x]
    design = np.column_stack(design).astype(float)
    y = rng.poisson(1.1, n)
    zero = y == 0
    k, m = design.shape[1], int(zero.sum())
    if m == 0:
        return None
    fit = linprog(
        np.concatenate([np.zeros(k), -np.ones(m)]),
        A_ub=np.hstack([-design[zero], np.eye(m)]), b_ub=np.zeros(m),
        A_eq=np.hstack([design[~zero], np.zeros((n - m, m))]) if m < n else None,
        b_eq=np.zeros(n - m) if m < n else None,
        bounds=[(None, None)] * k + [(0, 1)] * m, method="highs",
    )
    s = fit.x[k:]
    if fit.status != 0 or np.any((s > 1e-7) & (s < 1 - 1e-7)):
        raise ValueError("no clear answer")
    return {"a": a.tolist(), "b": b.tolist(), "x": x.tolist(), "y": y.tolist(), "rows": np.flatnonzero(zero)[s > 0.5].tolist()}


cases = []
while len(cases) < 200:
    case = one()
    if case:
        cases.append(case)
with open("separation.json", "w") as out:
    out.write("[" + ",\n".join(json.dumps(c, separators=(",", ":")) for c in cases) + "]\n")
