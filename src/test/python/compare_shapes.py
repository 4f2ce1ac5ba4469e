#!/usr/bin/env python3
"""Compare Rondure's star shapes with independent libraries on the same pixels.

Needs Debian's python3-sep, python3-photutils and python3-astropy; no part of the product.

    mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
    java -cp target/classes:target/test-classes:$(cat target/classpath.txt) \\
        rondure.bench.ShapeExport PICTURE target/shapes
    python3 src/test/python/compare_shapes.py target/shapes/*.plane.fits

    python3 src/test/python/compare_shapes.py --simulate target/simulated   # makes FITS pictures

For every star of Rondure's list with SNR above 50 and no other star near, it measures:

* fit FWHM     half-maximum width, sqrt(major * minor), of an elliptical Moffat profile fitted with
               scipy to the pixels within 1.5 FWHM, the model averaged over 4 x 4 points of each
               pixel; the width is that of the averaged profile, as a star looks on the sensor.
               Compared with fwhm_major * fwhm_minor. Fair for stars; not for trails and discs.
* centre FWHM  the same with the model taken at the pixel's centre alone: 3 to 9 % too narrow for
               stars of FWHM 1.3 to 1.4 px (see --simulate), shown for comparison.
* phot r.m.s.  sqrt((Mxx + Myy) / 2) by photutils.data_properties: plain sums, no weight, inside
               3 sigma (plus half the line length) of the background-subtracted cutout. Truncation
               at 3 sigma makes a Gaussian 2.8 % narrower (closed form), which is divided out; wings
               of Moffat-like stars widen it, and they should: Rondure's moments leave wings out.
* sep r.m.s.   sqrt((a^2 + b^2) / 2) of sep.extract with filter_kernel=None (its default kernel adds
               0.5 px^2 per axis), threshold 1.5 sigma. Cut at the isophote, so narrower for faint
               stars; every-pixel pictures only.
* elongation   a / b of each, against sqrt(M_major / M_minor).

Prints medians of the ratio ours / theirs. Aim: within 5 %.
"""
import csv
import sys
import warnings

import numpy as np
import sep
from astropy.io import fits
from photutils.morphology import data_properties
from scipy.optimize import least_squares

warnings.filterwarnings("ignore")
SNR_FROM = 50
STARS_MAX = 150


def read_stars(path):
    with open(path) as file:
        rows = [line for line in file if not line.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(rows)]


def axes(mxx, mxy, myy):
    half, spin = (mxx + myy) / 2, np.hypot((mxx - myy) / 2, mxy)
    return half + spin, half - spin


def background(plane):
    filled = np.where(np.isfinite(plane), plane, 0).astype(np.float32)
    mask = ~np.isfinite(plane)
    sky = sep.Background(np.ascontiguousarray(filled), mask=mask, bw=64, bh=64)
    return plane - sky.back(), max(sky.globalrms, 1e-6), mask


def moffat_width(cut, x0, y0, fwhm, points=4):
    """FWHM sqrt(major * minor) and elongation of an elliptical Moffat fitted to valid pixels.

    The model is averaged over points x points of each pixel; so is the profile whose width is told.
    """
    yy, xx = np.mgrid[: cut.shape[0], : cut.shape[1]]
    use = np.isfinite(cut) & (np.hypot(xx - x0, yy - y0) < max(1.5 * fwhm, 3))
    inside = (np.arange(points) + 0.5) / points - 0.5
    shift_y, shift_x = (grid.ravel() for grid in np.meshgrid(inside, inside, indexing="ij"))
    px, py, value = xx[use][:, None] + shift_x, yy[use][:, None] + shift_y, cut[use]

    def profile(p, at_x, at_y):
        _, x, y, txx, txy, tyy, beta, _ = p
        dx, dy = at_x - x, at_y - y
        q = txx * dx**2 + 2 * txy * dx * dy + tyy * dy**2
        return ((1 + np.maximum(q, 0)) ** -beta).mean(axis=-1)

    beta = 3.5
    inverse = 4 * (2 ** (1 / beta) - 1) / fwhm**2
    start = [value.max(), x0, y0, inverse, 0, inverse, beta, 0]
    low = [0, x0 - 3, y0 - 3, 0, -np.inf, 0, 1.2, -np.inf]
    high = [np.inf, x0 + 3, y0 + 3, np.inf, np.inf, np.inf, 30, np.inf]
    fit = least_squares(
        lambda p: p[7] + p[0] * profile(p, px, py) - value,
        start,
        bounds=(low, high),
        x_scale="jac",
    )
    _, x, y, txx, txy, tyy, _, _ = fit.x
    if axes(txx, txy, tyy)[1] <= 0:
        return np.nan, np.nan
    angle = 0.5 * np.arctan2(2 * txy, txx - tyy)

    def half_width(direction):
        way = np.linspace(0, 4 * fwhm, 1601)
        at_x = (x + way * np.cos(direction))[:, None] + shift_x
        at_y = (y + way * np.sin(direction))[:, None] + shift_y
        light = profile(fit.x, at_x, at_y)
        return 2 * way[np.argmax(light < light[0] / 2)]

    short, long = half_width(angle), half_width(angle + np.pi / 2)
    return np.sqrt(short * long), long / short


def plain_moments(cut, x0, y0, major, minor, angle):
    """Unweighted r.m.s. and elongation by photutils inside an ellipse of 3 sigma."""
    yy, xx = np.mgrid[: cut.shape[0], : cut.shape[1]]
    along = (xx - x0) * np.cos(angle) + (yy - y0) * np.sin(angle)
    across = (yy - y0) * np.cos(angle) - (xx - x0) * np.sin(angle)
    outside = (along**2 / major + across**2 / minor) > 9
    mask = outside | ~np.isfinite(cut)
    found = data_properties(np.where(mask, 0, cut), mask=mask)
    big = found.semimajor_sigma.value**2
    small = found.semiminor_sigma.value**2
    # a Gaussian cut at q = 9: variance 1 - (9/2) / (e^(9/2) - 1)
    kept = 1 - 4.5 / (np.exp(4.5) - 1)
    return np.sqrt((big + small) / 2 / kept), np.sqrt(big / small)


def compare(path):
    plane = fits.getdata(path).astype(np.float64)
    stars = read_stars(path.replace(".plane.fits", ".stars.csv"))
    light, noise, mask = background(plane)
    everywhere = not mask.any()
    table = None
    if everywhere:
        sep.set_extract_pixstack(3_000_000)
        sep.set_sub_object_limit(100_000)
        table = sep.extract(np.ascontiguousarray(light), 1.5 * noise, filter_kernel=None)
    places = np.array([(star["x"], star["y"]) for star in stars]).reshape(-1, 2)
    rows = []
    bright = [star for star in stars if star["snr"] > SNR_FROM]
    for star in bright[:STARS_MAX]:
        big, small = axes(star["mxx"], star["mxy"], star["myy"])
        reach = int(np.ceil(4 * np.sqrt(big) + 3))
        away = np.hypot(places[:, 0] - star["x"], places[:, 1] - star["y"])
        x, y = int(round(star["x"])), int(round(star["y"]))
        inside = reach < x < plane.shape[1] - reach and reach < y < plane.shape[0] - reach
        if not inside or np.sum(away < reach) > 1:
            continue
        cut = light[y - reach : y + reach + 1, x - reach : x + reach + 1]
        x0, y0 = star["x"] - x + reach, star["y"] - y + reach
        angle = 0.5 * np.arctan2(2 * star["mxy"], star["mxx"] - star["myy"])
        fwhm = np.sqrt(star["fwhm_major"] * star["fwhm_minor"])
        rms, elongation = np.sqrt((big + small) / 2), np.sqrt(big / small)
        fitted, fitted_elongation = moffat_width(cut, x0, y0, fwhm)
        plain, plain_elongation = plain_moments(cut, x0, y0, big, small, angle)
        centre, _ = moffat_width(cut, x0, y0, fwhm, points=1)
        drawn_out = star["fwhm_major"] / star["fwhm_minor"]
        row = [fwhm, elongation, fwhm / fitted, drawn_out / fitted_elongation, fwhm / centre]
        row += [rms / plain, elongation / plain_elongation, np.nan, np.nan]
        if table is not None and len(table):
            gap = np.hypot(table["x"] - star["x"], table["y"] - star["y"])
            nearest = table[gap.argmin()]
            if gap.min() < 2:
                row[7] = rms / np.sqrt((nearest["a"] ** 2 + nearest["b"] ** 2) / 2)
                row[8] = elongation / (nearest["a"] / nearest["b"])
        rows.append(row)
    show(path, rows)


def show(path, rows):
    name = path.split("/")[-1].replace(".plane.fits", "")
    if not rows:
        print(f"{name:34s} no isolated star above SNR {SNR_FROM}")
        return
    middle = np.nanmedian(np.array(rows), axis=0)
    text = " ".join("   -  " if np.isnan(value) else f"{value:6.3f}" for value in middle[2:])
    print(f"{name:34s} {len(rows):4d} {middle[0]:6.2f} {middle[1]:6.3f}   {text}")


def simulate(folder):
    """Pictures from another renderer: every pixel the mean of 5 x 5 points of the profile."""
    import os

    os.makedirs(folder, exist_ok=True)
    generator = np.random.default_rng(7)
    looks = {
        "gauss-1.1": (1.1, None, 0, 0),
        "moffat3-1.2": (1.2, 3.0, 0, 0),
        "gauss-2.0": (2.0, None, 0, 0),
        "gauss-3.5": (3.5, None, 0, 0),
        "moffat3-2.2": (2.2, 3.0, 0, 0),
        "moffat4.5-3.0": (3.0, 4.5, 0, 0),
        "ellipse-2.4x1.3": (2.4, None, 1.3, 0),
        "trail6-2.2": (2.2, None, 0, 6),
    }
    for name, (fwhm, beta, stretch, length) in looks.items():
        picture = np.full((900, 900), 400.0)
        for i in range(144):
            x = 40 + (i % 12) * 74 + generator.uniform(-3, 3)
            y = 40 + (i // 12) * 74 + generator.uniform(-3, 3)
            add_star(picture, x, y, 10 ** generator.uniform(4, 5.2), (fwhm, beta, stretch, length))
        picture += generator.normal(0, 1, picture.shape) * np.sqrt(picture)
        counts = np.clip(np.rint(picture), 0, 65535).astype(np.uint16)
        fits.writeto(f"{folder}/{name}.fits", counts, overwrite=True)


def add_star(picture, x, y, flux, look):
    fwhm, beta, stretch, length = look
    x0, y0, half = int(x), int(y), 34
    fine = (np.arange(5 * (2 * half + 1)) + 0.5) / 5 - 0.5 - half
    xx, yy = np.meshgrid(fine + x0 - x, fine + y0 - y)
    cos, sin = np.cos(0.6), np.sin(0.6)
    along, across = xx * cos + yy * sin, yy * cos - xx * sin
    total = np.zeros_like(xx)
    for shift in np.linspace(-length / 2, length / 2, 31) if length else [0]:
        u, v = (along - shift) / (stretch or 1), across
        if beta:
            alpha = fwhm / 2 / np.sqrt(2 ** (1 / beta) - 1)
            total += (1 + (u * u + v * v) / alpha**2) ** -beta
        else:
            total += np.exp(-(u * u + v * v) * 4 * np.log(2) / fwhm**2)
    side = 2 * half + 1
    pixels = total.reshape(side, 5, side, 5).mean(axis=(1, 3))
    picture[y0 - half : y0 + half + 1, x0 - half : x0 + half + 1] += flux * pixels / pixels.sum()


def main(arguments):
    if arguments[:1] == ["--simulate"]:
        simulate(arguments[1])
        return
    print(f"{'':34s} stars  FWHM  elong    ratios ours / theirs")
    print(f"{'':52s}  fit: width elong  centre: width  phot: rms elong  sep: rms elong")
    for path in arguments:
        compare(path)


if __name__ == "__main__":
    main(sys.argv[1:])
