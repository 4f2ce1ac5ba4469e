"""Light for other_nights.py: where stars go, what the lens makes of a point, how it lands on pixels.

Nothing here is shared with Rondure. Stars are painted in Fourier space: the light of a star is the
product of the transforms of its core, its disc of defocus, its coma, the pixel and the very path
its image takes while the shutter is open; so every star has its own kernel and pixels integrate
exactly. Coordinates are stored pixels, the centre of the first at (0, 0); camera axes x right,
y down, z forward; world axes east, north, up.
"""
import dataclasses

import numpy as np
from scipy import fft
from scipy.special import j1

OMEGA = 2 * np.pi / 86164.0905  # sidereal day, s
PIXEL_MOMENT = 1 / 12
RMS_PER_FWHM = 1 / 2.354820
STAMPS = (24, 32, 48, 64, 96, 128, 192, 256)
BATCH_VALUES = 6_000_000


@dataclasses.dataclass
class Camera:
    """A rectilinear lens with one radial distortion term in front of a sensor."""

    width: int
    height: int
    focal_px: float
    k1: float = 0.0
    centre: tuple = (0.0, 0.0)  # of the optical axis, px from the middle of the frame

    def project(self, vectors):
        """Pixels of unit vectors (..., 3) in camera axes; NaN behind the camera."""
        x, y, z = np.moveaxis(vectors, -1, 0)
        z = np.where(z > 0.05, z, np.nan)
        x, y = x / z, y / z
        stretch = self.focal_px * (1 + self.k1 * (x * x + y * y))
        return (x * stretch + (self.width - 1) / 2 + self.centre[0],
                y * stretch + (self.height - 1) / 2 + self.centre[1])

    def field(self, x, y):
        """Place in the field: 1 at half the diagonal from the optical axis; and the direction."""
        half = np.hypot(self.width, self.height) / 2
        u = (x - (self.width - 1) / 2 - self.centre[0]) / half
        v = (y - (self.height - 1) / 2 - self.centre[1]) / half
        return u, v


def rotated(vectors, turns):
    """Rodrigues: vectors (n, 3) or (n, k, 3) turned by rotation vectors (k, 3) → (n, k, 3)."""
    angle = np.linalg.norm(turns, axis=1)
    axis = turns / np.maximum(angle, 1e-30)[:, None]
    c, s = np.cos(angle)[None, :, None], np.sin(angle)[None, :, None]
    v = vectors if vectors.ndim == 3 else vectors[:, None, :]
    a = axis[None]
    along = np.sum(v * a, axis=2, keepdims=True)
    return v * c + np.cross(a, v) * s + a * along * (1 - c)


def aim(azimuth_deg, altitude_deg, roll_deg=0.0):
    """Camera axes (right, down, forward) as rows, in east, north, up."""
    a, h, r = np.radians([azimuth_deg, altitude_deg, roll_deg])
    forward = np.array([np.sin(a) * np.cos(h), np.cos(a) * np.cos(h), np.sin(h)])
    right = np.array([np.cos(a), -np.sin(a), 0])
    down = np.cross(forward, right)
    return np.array([np.cos(r) * right + np.sin(r) * down,
                     np.cos(r) * down - np.sin(r) * right, forward])


def pole(latitude_deg):
    """The north celestial pole in world axes, in both hemispheres."""
    return np.array([0, np.cos(np.radians(latitude_deg)), np.sin(np.radians(latitude_deg))])


@dataclasses.dataclass
class Lens:
    """What the lens makes of a point. Lengths in px; tilt and the terms in r² at the corner."""

    fwhm: float = 2.0
    beta: float = 0.0  # Moffat exponent, 0 = Gaussian
    tilt: tuple = (0.0, 0.0)
    curvature: float = 0.0
    astigmatism: float = 0.0
    coma: float = 0.0

    def discs(self, defocus, u, v):
        """Signed diameters of the disc along the radius and across; their field mean is defocus."""
        r2 = u * u + v * v
        mean = defocus + self.tilt[0] * u + self.tilt[1] * v + self.curvature * (r2 - 1 / 3)
        split = self.astigmatism * r2
        return mean + split, mean - split

    def core_moment(self):
        """Of the Gaussian of the same half-maximum width, with the pixel's own."""
        return (self.fwhm * RMS_PER_FWHM) ** 2 + PIXEL_MOMENT

    def core_transform(self):
        """A function of frequency, cycles/px."""
        if not self.beta:
            sigma = self.fwhm * RMS_PER_FWHM
            return lambda k: np.exp(-2 * (np.pi * sigma * k) ** 2)
        alpha2 = self.fwhm**2 / (4 * (2 ** (1 / self.beta) - 1))
        # A Moffat profile is a mixture of Gaussians: (1 + r²/α²)^-β = ∫ s^(β-1) e^(-s(1+r²/α²)) ds/Γ(β)
        s = np.exp(np.linspace(np.log(1e-3), np.log(30), 120))
        weight = s ** (self.beta - 1) * np.exp(-s)  # light s^(β-2) e^-s of each, times ds = s dlog s
        grid = np.linspace(0, 2, 2001)
        table = np.exp(-(np.pi * grid[:, None]) ** 2 * alpha2 / s) @ weight / weight.sum()
        return lambda k: np.interp(k, grid, table)


def coma_rays(rings=5, spokes=12):
    """Seidel's coma of unit size about its centroid, along the radius and across (n, 2)."""
    rho2 = (np.arange(rings) + 0.5) / rings
    phi = (np.arange(spokes) + 0.5) * 2 * np.pi / spokes
    radial = (rho2[:, None] * (2 + np.cos(2 * phi))).ravel()
    return np.stack([radial - radial.mean(), (rho2[:, None] * np.sin(2 * phi)).ravel()], 1)


def stamp_sides(extent, flux):
    """Side of the stamp that holds a star's light, px; brighter stars show more of their wings."""
    reach = extent + np.where(flux > 5e5, 40, np.where(flux > 5e4, 22, np.where(flux > 5e3, 12, 7)))
    return np.array(STAMPS)[np.searchsorted(STAMPS, np.minimum(2 * reach, STAMPS[-1]))]


def paint(plane, stars, core, halo=(0.0, 0.0)):
    """Adds stars to a plane.

    stars: dict of x, y (n, k) paths in px; flux (n,); radial, across (n,) disc diameters; coma (n,)
    size in px; cos, sin (n,) of the direction to the optical axis. halo: share of the light, FWHM.
    """
    reach_x = np.ptp(stars["x"], axis=1)
    reach_y = np.ptp(stars["y"], axis=1)
    wide = np.maximum(np.abs(stars["radial"]), np.abs(stars["across"]))
    extent = np.maximum(reach_x, reach_y) / 2 + wide / 2 + 2 * np.abs(stars["coma"]) + halo[1]
    sides = stamp_sides(extent, stars["flux"])
    for side in np.unique(sides):
        chosen = np.nonzero(sides == side)[0]
        steps = stars["x"].shape[1]
        batch = max(1, int(BATCH_VALUES / (2 * side * side + 3 * side * steps)))
        for start in range(0, len(chosen), batch):
            some = {key: value[chosen[start : start + batch]] for key, value in stars.items()}
            paint_batch(plane, some, int(side), core, halo)


def paint_batch(plane, stars, side, core, halo):
    left = np.rint(stars["x"].mean(1)).astype(int) - side // 2
    top = np.rint(stars["y"].mean(1)).astype(int) - side // 2
    fx = (np.arange(side + 1) / side).astype(np.float32)
    fy = (fft.fftfreq(2 * side) * 2).astype(np.float32)
    light = waves(stars["x"] - left[:, None], stars["y"] - top[:, None], fx, fy)
    radius = np.hypot(fy[:, None], fx)
    shape = core(radius)
    if halo[0]:
        wide = np.exp(-2 * (np.pi * halo[1] * RMS_PER_FWHM * radius) ** 2)
        shape = (1 - halo[0]) * shape + halo[0] * wide
    light *= (shape * np.sinc(fx) * np.sinc(fy)[:, None]).astype(np.float32)
    light *= disc_waves(stars, fx, fy)
    if np.abs(stars["coma"]).max() > 0.03:
        rays = coma_rays()
        r, t = stars["coma"][:, None] * rays[:, 0], stars["coma"][:, None] * rays[:, 1]
        c, s = stars["cos"][:, None], stars["sin"][:, None]
        light *= waves(r * c - t * s, r * s + t * c, fx, fy)
    stamps = fft.irfft2(light, workers=1)[:, ::2, ::2] * 4
    for i, stamp in enumerate(stamps):
        add(plane, stamp * stars["flux"][i], left[i], top[i])


def waves(x, y, fx, fy):
    """Mean of exp(-2πi k·p) over the points (n, k) → (n, frequencies y, frequencies x)."""
    along_x = np.exp(-2j * np.pi * (x.astype(np.float32)[:, :, None] * fx)).astype(np.complex64)
    along_y = np.exp(-2j * np.pi * (y.astype(np.float32)[:, :, None] * fy)).astype(np.complex64)
    return np.matmul(along_y.transpose(0, 2, 1), along_x) / x.shape[1]


def disc_waves(stars, fx, fy):
    """Transform of a uniform elliptic disc: 2 J1(z) / z."""
    c, s = (stars[key].astype(np.float32)[:, None, None] for key in ("cos", "sin"))
    along = stars["radial"].astype(np.float32)[:, None, None] * (c * fx + s * fy[:, None])
    across = stars["across"].astype(np.float32)[:, None, None] * (c * fy[:, None] - s * fx)
    z = np.pi * np.hypot(along, across)
    return np.where(z < 1e-3, 1, 2 * j1(z) / np.maximum(z, 1e-3)).astype(np.float32)


def add(plane, stamp, left, top):
    height, width = plane.shape
    x0, x1 = max(0, left), min(width, left + stamp.shape[1])
    y0, y1 = max(0, top), min(height, top + stamp.shape[0])
    if x0 < x1 and y0 < y1:
        plane[y0:y1, x0:x1] += stamp[y0 - top : y1 - top, x0 - left : x1 - left]


def covariance(x, y):
    """Second central moments (n, 3) of paths (n, k): xx, xy, yy."""
    x = x - x.mean(1, keepdims=True)
    y = y - y.mean(1, keepdims=True)
    return np.stack([(x * x).mean(1), (x * y).mean(1), (y * y).mean(1)], 1)
