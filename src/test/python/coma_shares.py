"""What share of coma's second moments an ellipse fitted to a star shows.

Needs numpy and scipy. Prints the table in ComaShape.java, and beside it the form in SeenComa.java.
Rays of an evenly lit pupil land at c (3u² + v², 2uv); the core is a Gaussian of r.m.s. width 1, so that
their moments are c²/2 along the radius and c²/6 across. A Gaussian ellipse is fitted by least squares to
the pixels within 3.5 of its own σ, the noise being 1 + 3 times the star's light over its peak.

    python3 coma_shares.py
"""

import numpy as np
from scipy.optimize import least_squares

RAYS = 12800
GOLDEN_ANGLE = 2.399963229728653
REACH = 3.5
STARLIGHT = 3
WINDOWS = 6
FORM = {"along": (0.36, 10.3), "across": (0.47, 15.1)}


def image(coma, step=0.3):
    """A comatic star on a square grid: its coordinates and light, rows downwards."""
    index = np.arange(RAYS)
    radius = np.sqrt((index + 0.5) / RAYS)
    u = radius * np.cos(GOLDEN_ANGLE * index)
    v = radius * np.sin(GOLDEN_ANGLE * index)
    x = coma * (3 * u * u + v * v) - coma
    y = 2 * coma * u * v
    grid = np.arange(-6 - 3 * coma, 6 + 3 * coma + step, step)
    along = np.exp(-((grid[:, None] - x[None, :]) ** 2) / 2)
    across = np.exp(-((grid[:, None] - y[None, :]) ** 2) / 2)
    return grid, across @ along.T


def fitted(grid, light):
    """Second moments of the ellipse, along and across."""
    x, y = np.meshgrid(grid, grid)
    peak = light.max()
    start = [peak, grid[np.unravel_index(light.argmax(), light.shape)[1]], 0, 0.3, 0.2]
    for _ in range(WINDOWS):
        _, x0, y0, along, across = start
        near = (x - x0) ** 2 / np.exp(along) + (y - y0) ** 2 / np.exp(across) < REACH**2
        xs, ys, seen = x[near], y[near], light[near]
        weight = 1 / np.sqrt(1 + STARLIGHT * seen / peak)

        def off(p):
            shape = -((xs - p[1]) ** 2) / np.exp(p[3]) / 2 - (ys - p[2]) ** 2 / np.exp(p[4]) / 2
            return (p[0] * np.exp(shape) - seen) / peak * weight

        start = least_squares(off, start).x
    return np.exp(start[3]), np.exp(start[4])


def form(coma, least, half):
    return least + (1 - least) / (1 + (coma * coma / half) ** 2)


def main():
    print("c / width   along   form   across   form")
    for coma in (0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 8, 10):
        along, across = fitted(*image(coma, 0.3 if coma < 5 else 0.4))
        print(
            f"{coma:9.1f} {(along - 1) / (coma**2 / 2):8.4f} {form(coma, *FORM['along']):6.3f}"
            f" {(across - 1) / (coma**2 / 6):8.4f} {form(coma, *FORM['across']):6.3f}"
        )


if __name__ == "__main__":
    main()
