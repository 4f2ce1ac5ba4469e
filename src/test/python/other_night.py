#!/usr/bin/python3
"""A second night simulator, written apart from the first, to judge the whole program from outside.

It shares no code with Rondure and paints light in another way: pixel-integrated kernels, laid down
step by step along the gnomonic path of every star. Used as a check only.

    other_night.py DIR            renders DIR/frames (formats, orientations and EXIF mixed) and
                                  DIR/truth.json
    java -jar target/rondure.jar report DIR/frames --out DIR/out
    other_night.py --compare DIR  prints how far each format is from the truth

Needs numpy, scipy, Pillow and exiftool. The width of the truth is that of the area above half of
the maximum, 2 √(A / π); roundness and direction are those of the same area; all with the pixel's
own blur. Directions are clockwise from the right, as displayed.
"""
import json
import pathlib
import sys

import numpy as np
from scipy.ndimage import zoom
from scipy.signal import fftconvolve

import other_formats

WIDTH, HEIGHT, FOCAL_MM, PITCH_UM, LATITUDE_DEG = 900, 600, 24.0, 6.0, 45.0
OMEGA = 2 * np.pi / 86164.0905  # sidereal day, s
FINE = 8  # kernel steps in a pixel
BLACK, WHITE, COUNTS_PER_ELECTRON, READ_NOISE = 512, 16383, 0.25, 4.0
FOCAL_PX = FOCAL_MM * 1000 / PITCH_UM


def axes(azimuth_deg, altitude_deg):
    """Camera axes (right, down, forward) as rows, in east, north, up."""
    a, h = np.radians([azimuth_deg, altitude_deg])
    forward = np.array([np.sin(a) * np.cos(h), np.cos(a) * np.cos(h), np.sin(h)])
    right = np.array([np.cos(a), -np.sin(a), 0])
    return np.array([right, np.cross(forward, right), forward])


def turned(vectors, seconds):
    """Rodrigues about the pole: the sky goes from east to west."""
    pole = np.array([0, np.cos(np.radians(LATITUDE_DEG)), np.sin(np.radians(LATITUDE_DEG))])
    c, s = np.cos(-OMEGA * seconds), np.sin(-OMEGA * seconds)
    return vectors * c + np.cross(pole, vectors) * s + np.outer(vectors @ pole, pole) * (1 - c)


def project(vectors, camera):
    """Gnomonic: px, the centre of the first pixel at (0, 0)."""
    x, y, z = (vectors @ camera.T).T
    z = np.maximum(z, 0.05)
    return FOCAL_PX * x / z + (WIDTH - 1) / 2, FOCAL_PX * y / z + (HEIGHT - 1) / 2


def kernel(fwhm, moffat, disc, path):
    """Flux of a star in a pixel at each fine offset: core, defocus disc, pixel, camera's path."""
    reach = int(np.ceil(4 * fwhm + disc / 2 + 3 + np.abs(path).max()))
    grid = np.arange(-reach * FINE, reach * FINE + 1) / FINE
    r2 = grid[None, :] ** 2 + grid[:, None] ** 2
    if moffat:
        alpha2 = fwhm**2 / (4 * (2 ** (1 / moffat) - 1))
        core = (1 + r2 / alpha2) ** -moffat
    else:
        core = np.exp(-r2 * 4 * np.log(2) / fwhm**2)
    if disc > 0:
        core = fftconvolve(core, np.clip((disc / 2 - np.sqrt(r2)) * FINE + 0.5, 0, 1), "same")
    box = np.ones(FINE + 1)
    box[[0, -1]] = 0.5
    core = np.maximum(fftconvolve(core, np.outer(box, box), "same"), 0)
    return smeared(core / core.sum() * FINE**2, path)


def smeared(fine, path):
    steps = [np.roll(fine, np.rint(np.array(p[::-1]) * FINE).astype(int), (0, 1)) for p in path]
    return sum(steps) / len(steps)


def lay(plane, fine, x, y, flux):
    """Adds a star: every FINE-th value of the kernel, starting at its sub-pixel phase."""
    reach = fine.shape[0] // 2 // FINE - 1
    column, row = int(round(x)), int(round(y))
    left, right = max(0, column - reach), min(WIDTH, column + reach + 1)
    top, bottom = max(0, row - reach), min(HEIGHT, row + reach + 1)
    if left < right and top < bottom:
        at_x = fine.shape[0] // 2 + int(round((left - x) * FINE))
        at_y = fine.shape[0] // 2 + int(round((top - y) * FINE))
        part = fine[at_y :: FINE, at_x :: FINE][: bottom - top, : right - left]
        plane[top:bottom, left:right] += flux * part


def truth(fine, camera, seconds):
    """Median over the frame of what the half-maximum area of a star measures."""
    found = []
    for share_x, share_y in np.ndindex(5, 3):
        place = np.array([(share_x - 2) * 0.2 * WIDTH, (share_y - 1) * 0.25 * HEIGHT, FOCAL_PX])
        star = (place / np.linalg.norm(place) @ camera)[None]
        ends = [np.ravel(project(turned(star, t), camera)) for t in (-seconds / 2, seconds / 2)]
        trail = ends[1] - ends[0]
        steps = np.arange(-10, 11)[:, None] / 21 * trail
        reach = int(np.abs(trail).max() / 2) + 2
        area = zoom(smeared(np.pad(fine, reach * FINE), steps), 2, order=3)
        rows, columns = np.nonzero(area >= area.max() / 2)
        values, vectors = np.linalg.eigh(np.cov(columns, rows))
        angle = np.degrees(np.arctan2(vectors[1, 1], vectors[0, 1])) % 180
        width = 2 * np.sqrt(len(rows) / np.pi) / (2 * FINE)
        found.append((width, np.sqrt(values[0] / values[1]), angle))
    widths, roundness, angles = np.array(found).T
    mean = np.mean((1 - roundness) * np.exp(2j * np.radians(angles)))
    return float(np.median(widths)), float(np.median(roundness)), np.degrees(np.angle(mean)) / 2


def light(rng, case, stars, camera):
    """Electrons of red, green and blue over the frame, and the truth."""
    seconds = case["seconds"]
    fine = kernel(2.4, case["moffat"], case["disc"], case["path"])
    plane = np.zeros((HEIGHT, WIDTH))
    paths = [project(turned(stars["at"], case["start"] + seconds * (j + 0.5) / 16), camera)
             for j in range(16)]
    for i in np.nonzero(np.abs(paths[0][0] - WIDTH / 2) < WIDTH)[0]:
        for xs, ys in paths:
            lay(plane, fine, xs[i], ys[i], stars["electrons"][i] * seconds / 15 / 16)
    y, x = np.mgrid[:HEIGHT, :WIDTH]
    ground = y > 0.88 * HEIGHT + 0.04 * HEIGHT * np.sin(x / 60)
    radius2 = ((x - WIDTH / 2) ** 2 + (y - HEIGHT / 2) ** 2) / (WIDTH**2 + HEIGHT**2) * 4
    vignetting = 1 - 0.35 * radius2
    sky = 200 * seconds / 15 * (1 + 0.5 * y / HEIGHT) * vignetting
    base = np.where(ground, 8, sky)
    shine = np.where(ground, 0, plane * vignetting)
    for lamp in range(5):
        lay(shine, fine, WIDTH * (lamp + 0.7) / 6, 0.95 * HEIGHT, 2e4)
    return [base * b + shine * s for b, s in ((0.7, 0.8), (1, 1), (0.85, 0.9))], truth(
        fine, camera, seconds)


def counts(rng, electrons, hot):
    shot = rng.poisson(electrons) + rng.normal(0, READ_NOISE, electrons.shape) + hot
    return np.clip(np.rint(shot * COUNTS_PER_ELECTRON + BLACK), 0, WHITE)


def cases(number):
    """What happens in frame `number`: sharp, trailing, shaken, out of focus."""
    swing = [(3 * np.sin(t), 2 * np.sin(t)) for t in np.linspace(0, 2 * np.pi, 24, endpoint=False)]
    kind = ("sharp", "trailing", "sharp", "tripod", "sharp", "focus")[number % 6]
    return {
        "kind": kind,
        "seconds": 15.0 if kind == "trailing" else 4.0,
        "start": 30.0 * number,
        "moffat": (0, 3.2)[number % 2],
        "disc": 4.0 if kind == "focus" else 0.0,
        "path": np.array(swing if kind == "tripod" else [(0, 0)]),
    }


def render(folder):
    rng = np.random.default_rng(2026)
    camera = axes(150, 40)
    half = np.arctan(np.hypot(WIDTH, HEIGHT) / 2 / FOCAL_PX) * 1.6
    up = rng.uniform(np.cos(half), 1, 1500)
    round_about = rng.uniform(0, 2 * np.pi, 1500)
    out = np.sqrt(1 - up**2)
    at = np.stack([out * np.cos(round_about), out * np.sin(round_about), up], 1) @ camera
    electrons = np.minimum(3000 * rng.uniform(0, 1, 1500) ** -1.25, 4e6)
    stars = {"at": at, "electrons": electrons}
    hot = np.where(rng.uniform(size=(HEIGHT, WIDTH)) < 1e-4, rng.uniform(800, 9000), 0)
    told = {}
    (folder / "frames").mkdir(parents=True)
    for number, (name, write) in enumerate(other_formats.FORMATS.items()):
        case = cases(number)
        planes, (width, roundness, angle) = light(rng, case, stars, camera)
        picture = [counts(rng, plane, hot) for plane in planes]
        orientation = number % 8 + 1 if other_formats.has_exif(name) else 1
        file = folder / "frames" / f"{number:02d}_{name}"
        write(file, np.stack(picture, -1))
        told[file.name] = {
            "kind": case["kind"], "fwhmPx": width, "roundness": roundness,
            "angleDeg": other_formats.displayed(angle, orientation) % 180}
        if other_formats.has_exif(name) and number % 5 != 4:
            other_formats.describe(file, case, orientation)
        elif orientation != 1:
            told[file.name]["angleDeg"] = angle % 180
    (folder / "truth.json").write_text(json.dumps(told, indent=1))


def compare(folder):
    told = json.loads((folder / "truth.json").read_text())
    night = json.loads((folder / "out" / "night.json").read_text())
    print("| file | truth | cause | width over true | roundness minus true | direction off |")
    for frame in sorted(night["frames"], key=lambda f: f["file"]):
        true = told[frame["file"]]
        if frame["status"] != "measured":
            print(f"| {frame['file']} | {true['kind']} | {frame['status']}: {frame['reason']} |")
            continue
        off = (frame["elongationAngleDeg"] - true["angleDeg"] + 90) % 180 - 90
        print(f"| {frame['file']} | {true['kind']} | {frame['cause']} "
              f"| {frame['fwhmPx'] / true['fwhmPx']:.3f} "
              f"| {frame['roundness'] - true['roundness']:+.3f} | {off:+.1f}° |")


if __name__ == "__main__":
    if sys.argv[1] == "--compare":
        compare(pathlib.Path(sys.argv[2]))
    else:
        render(pathlib.Path(sys.argv[1]))
