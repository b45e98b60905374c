"""Makes regression.json: Poisson regressions with offset on 200 random data sets.

Run in this folder: python3 regression.py
statsmodels 0.13.5: GLM with cov_type="cluster" for the cluster-robust errors
(its default small-sample factor), scale="X2" for the quasi-Poisson ones.
"""
import json

import numpy as np
import statsmodels.api as sm

rng = np.random.default_rng(19860013)


def digits(values):
    return [float("%.12g" % v) for v in values]


def one():
    trips, levels = rng.integers(4, 9), rng.integers(2, 5)
    trip = np.repeat(np.arange(trips), rng.integers(2, 6))
    n = len(trip)
    band = rng.integers(0, levels, n)
    temp = np.round(rng.uniform(18, 30, n), 1)
    hours = np.round(rng.uniform(0.5, 20, n), 2)
    luck = rng.gamma(2, 0.5, trips)[trip]
    y = rng.poisson(0.3 * hours * luck * np.exp(0.4 * band - 0.05 * (temp - 24)))
    x = np.column_stack([np.ones(n)] + [(band == k).astype(float) for k in range(1, levels)] + [temp])
    if np.linalg.matrix_rank(x) < x.shape[1] or min(np.bincount(band, y, levels)) == 0:
        return None
    tight = {"tol": 1e-13, "maxiter": 200, "tol_criterion": "params"}
    model = sm.GLM(y, x, family=sm.families.Poisson(), offset=np.log(hours))
    plain = model.fit(**tight)
    quasi = model.fit(**tight, scale="X2")
    robust = model.fit(**tight, cov_type="cluster", cov_kwds={"groups": trip})
    if not plain.converged or max(abs(plain.params)) > 20:
        return None
    return {
        "trip": trip.tolist(), "band": band.tolist(), "temp": temp.tolist(), "hours": hours.tolist(), "y": y.tolist(),
        "beta": digits(plain.params), "se": digits(plain.bse), "quasi": digits(quasi.bse), "robust": digits(robust.bse),
        "deviance": digits([plain.deviance])[0], "x2": digits([plain.pearson_chi2])[0], "loglik": digits([plain.llf])[0],
    }


cases = []
while len(cases) < 200:
    case = one()
    if case:
        cases.append(case)
with open("regression.json", "w") as out:
    out.write("[" + ",\n".join(json.dumps(c, separators=(",", ":")) for c in cases) + "]\n")
