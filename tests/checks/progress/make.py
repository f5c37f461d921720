#!/usr/bin/env python3
"""Makes the stored values of this folder anew with SciPy, statsmodels and pymannkendall.

    python3 -m venv venv && venv/bin/pip install scipy statsmodels pymannkendall
    venv/bin/python tests/checks/progress/make.py

The inputs are drawn from a fixed seed: ties, few values, outliers, gaps. Nothing here is anybody's measurement.
"""
import json
import math
import pathlib

import numpy as np
import pandas as pd
import pymannkendall
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import stats
from statsmodels.formula.api import ols
from statsmodels.stats.descriptivestats import sign_test  # noqa: F401  (the interval below inverts this test)

HERE = pathlib.Path(__file__).parent
RNG = np.random.default_rng(20260214)


def number(value):
    return None if value is None or not math.isfinite(value) else float(value)


def series():
    """Points (x, y) of many kinds."""
    cases = []
    for n in (2, 3, 4, 5, 6, 8, 12, 20, 40, 75):
        x = np.sort(RNG.choice(np.arange(3 * n), n, replace=False)).astype(float)
        y = 12 + 0.05 * x + RNG.normal(0, 1.5, n)
        cases.append((f"normal, n = {n}", x, np.round(y, 3)))
        cases.append((f"coarse: many ties in y, n = {n}", x, np.round(y)))
        outlier = np.round(y, 3)
        outlier[n // 2] += 60
        cases.append((f"one outlier, n = {n}", x, outlier))
        tied = np.sort(RNG.integers(0, max(2, n // 2), n)).astype(float)
        if tied[0] != tied[-1]:
            cases.append((f"ties in x and y, n = {n}", tied, np.round(y)))
    cases.append(("all y alike", np.arange(7.0), np.full(7, 3.25)))
    cases.append(("Sen 1968, his example", np.array([1, 2, 3, 4, 10, 12, 18.0]), np.array([9, 15, 19, 20, 45, 55, 78.0])))
    cases.append(("Hollander & Wolfe, example 9.1", np.arange(1, 6.0), np.array([1.26, 1.27, 1.12, 1.16, 1.03])))
    return cases


def slopes():
    out = []
    for name, x, y in series():
        for confidence in (0.95, 0.93):
            fit = stats.theilslopes(y, x, alpha=confidence)
            out.append({
                "name": name, "x": x.tolist(), "y": y.tolist(), "confidence": confidence, "z": float(-stats.norm.ppf((1 - confidence) / 2)),
                "slope": number(fit.slope), "intercept": number(fit.intercept), "low": number(fit.low_slope), "high": number(fit.high_slope),
            })
    return out


def medians():
    """The interval inverts the sign test: the narrowest pair of order statistics that covers 95 %."""
    out = []
    for n in (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 31, 50, 100, 365, 730):
        for name, values in (("normal", RNG.normal(10, 2, n)), ("ties", RNG.integers(0, 5, n).astype(float))):
            values = np.round(values, 3)
            ordered = np.sort(values)
            low = high = covers = None
            if n >= 3:
                k = int(stats.binom.ppf(0.025, n, 0.5))
                # ppf gives the smallest k with P(B <= k) >= 0.025; k order statistics may be left out on each side if P(B < k) <= 0.025.
                while k > 0 and stats.binom.cdf(k - 1, n, 0.5) > 0.025:
                    k -= 1
                k = max(k, 1)
                low, high = ordered[k - 1], ordered[n - k]
                covers = 1 - 2 * stats.binom.cdf(k - 1, n, 0.5)
            out.append({"name": f"{name}, n = {n}", "values": values.tolist(), "median": float(np.median(values)), "low": number(low), "high": number(high), "covers": number(covers)})
    return out


def table_anova(rows):
    frame = pd.DataFrame([(s, t, v) for s, row in enumerate(rows) for t, v in enumerate(row)], columns=["s", "t", "v"])
    fit = sm.stats.anova_lm(ols("v ~ C(s) + C(t)", frame).fit(), typ=1)
    ms = {k: float(fit.loc[k, "mean_sq"]) for k in ("C(s)", "C(t)", "Residual")}
    n, k = len(rows), len(rows[0])
    bs, bt, e = ms["C(s)"], ms["C(t)"], ms["Residual"]
    return {"rows": rows, "ms_subjects": bs, "ms_trials": bt, "ms_error": e, "icc_2_1": (bs - e) / (bs + (k - 1) * e + k * (bt - e) / n), "icc_3_1": (bs - e) / (bs + (k - 1) * e)}


def tables():
    out = []
    for n, k in ((2, 2), (5, 3), (12, 3), (30, 2), (8, 5)):
        rows = np.round(RNG.normal(12, 2, (n, 1)) + RNG.normal(0, 1, (n, k)) + np.arange(k) * 0.3, 3)
        out.append({"name": f"{n} x {k}", **table_anova(rows.tolist())})
    weir = [[146, 140], [148, 152], [170, 152], [90, 99], [157, 145], [156, 153], [176, 167], [205, 218]]
    out.append({"name": "Weir 2005, data set A", **table_anova([list(map(float, row)) for row in weir])})
    shrout = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]
    out.append({"name": "Shrout & Fleiss 1979", **table_anova([list(map(float, row)) for row in shrout])})
    return out


def groups():
    """Days with different numbers of trials: pooled scatter within, and the share between."""
    out = []
    for sizes in ([3, 3, 3], [1, 2, 3, 1, 5], [2, 2], [3] * 40, [1, 1, 4], [6, 2, 2, 2, 9, 1]):
        days = [np.round(RNG.normal(RNG.normal(12, 1.2), 1, size), 3).tolist() for size in sizes]
        repeated = [day for day in days if len(day) >= 2]
        frame = pd.DataFrame([(d, v) for d, day in enumerate(repeated) for v in day], columns=["d", "v"])
        fit = ols("v ~ C(d)", frame).fit()
        within = float(fit.mse_resid)
        share = None
        if len(repeated) >= 2:
            between = float(sm.stats.anova_lm(fit, typ=1).loc["C(d)", "mean_sq"])
            counts = np.array([len(day) for day in repeated])
            size = (counts.sum() - (counts ** 2).sum() / counts.sum()) / (len(counts) - 1)
            share = min(1.0, max(0.0, (between - within) / (between + (size - 1) * within)))
        out.append({"days": days, "sem": math.sqrt(within), "df": int(fit.df_resid), "share": share,
                    "mdc90": 1.645 * math.sqrt(2 * within), "mdc95": 1.96 * math.sqrt(2 * within)})
    return out


def likeness():
    """Hamed & Rao 1998 on residuals: how much the variance of the score grows, up to seven lags."""
    out = []
    for n, carry in ((10, 0.0), (30, 0.0), (30, 0.7), (60, 0.5), (120, 0.9), (60, -0.6)):
        noise = RNG.normal(0, 1, n)
        values = np.zeros(n)
        for i in range(n):
            values[i] = carry * (values[i - 1] if i else 0) + noise[i]
        # pymannkendall takes the trend out itself, over 1..n; the same is done here before the residuals are stored.
        values = np.round(values + 0.02 * np.arange(n), 4)
        fit = pymannkendall.hamed_rao_modification_test(values, lag=7)
        plain = pymannkendall.original_test(values)
        # It gives the score's variance with and without.
        slope = pymannkendall.sens_slope(values).slope
        residuals = (values - np.arange(1, n + 1) * slope).tolist()
        out.append({"n": n, "carry": carry, "residuals": residuals, "factor": float(fit.var_s / plain.var_s)})
    return out


def main():
    versions = {"scipy": scipy.__version__, "statsmodels": statsmodels.__version__, "numpy": np.__version__}
    for name, make in (("slopes", slopes), ("medians", medians), ("tables", tables), ("groups", groups), ("likeness", likeness)):
        text = json.dumps({"made_with": versions, "cases": make()}, separators=(",", ":"), ensure_ascii=False)
        # One case a line.
        text = text.replace('{"name"', '\n{"name"').replace('{"days"', '\n{"days"').replace('{"n"', '\n{"n"')
        (HERE / f"{name}.json").write_text(text + "\n")


if __name__ == "__main__":
    main()
