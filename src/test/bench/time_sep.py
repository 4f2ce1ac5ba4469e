#!/usr/bin/env python3
"""Time sep (C) on a FITS picture: background, extraction, windowed positions; decoding excluded.

Needs Debian's python3-sep and python3-astropy; no part of the product. See speed.sh.
"""
import sys
import time

import numpy as np
import sep
from astropy.io import fits

REPEATS = 9


def once(plane):
    start = time.perf_counter()
    sky = sep.Background(plane, bw=64, bh=64)
    light = plane - sky
    background = time.perf_counter()
    stars = sep.extract(light, 5, err=sky.globalrms)
    extraction = time.perf_counter()
    radius, _ = sep.flux_radius(
        light, stars["x"], stars["y"], 6 * stars["a"], 0.5, normflux=stars["flux"], subpix=5
    )
    sep.winpos(light, stars["x"], stars["y"], 2 / 2.35 * radius)
    end = time.perf_counter()
    return len(stars), (background - start, extraction - background, end - extraction, end - start)


sep.set_extract_pixstack(3_000_000)
plane = np.ascontiguousarray(fits.getdata(sys.argv[1]).astype(np.float32))
runs = [once(plane) for _ in range(REPEATS)]
times = 1000 * np.array([run[1] for run in runs])
print(f"sep {sep.__version__}: {runs[0][0]} sources on {plane.shape[1]} x {plane.shape[0]} px")
for name, column in zip(("background", "extraction", "positions", "together"), times.T):
    print(f"  {name:12s} {np.median(column):7.0f} ms (median of {REPEATS}), least {column.min():.0f}")
