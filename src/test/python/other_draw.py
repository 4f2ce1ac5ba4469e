"""Nights drawn by lot for other_nights.py: one of each trouble for a number, as drawn-7-gusts.

Nobody looked at numbers below 200 while the program was mended: they judge what the nights of
other_scenes.py, which were looked at, cannot.
"""
import numpy as np

import other_optics as optics
from other_motion import Droop, Gust, Hand, Knock
from other_nights import Night
from other_optics import Lens

FORMATS = ("dng", "dng", "dng", "tif", "jpg94")
FOCAL_LENGTHS_MM = (14, 20, 24, 35, 50, 85, 135)
DEGREES_PER_SECOND = 360 / 86164.0905


def short_seconds(focal_mm, pitch_um, px=0.8):
    """An exposure in which a star on the equator runs px pixels."""
    per_second = np.radians(DEGREES_PER_SECOND) * focal_mm * 1000 / pitch_um
    return float(np.clip(round(px / per_second, 1), 0.5, 20))


class Lot:
    """The drawer of one night."""

    def __init__(self, number, trouble):
        self.rng = np.random.default_rng([number] + [ord(letter) for letter in trouble])
        self.name = f"drawn-{number}-{trouble}"

    def real(self, low, high):
        return float(self.rng.uniform(low, high))

    def one(self, *choices):
        return choices[self.rng.integers(len(choices))]

    def some(self, count, of):
        return tuple(sorted(int(i) for i in self.rng.permutation(of)[:count]))

    def usual(self, **given):
        focal_mm = given.get("focal_mm") or self.one(*FOCAL_LENGTHS_MM)
        pitch_um = given.get("pitch_um", 5.0 if focal_mm > 20 else 12.0)
        latitude = self.real(25, 62) * self.one(1, 1, -1)
        facts = {
            "focal_mm": focal_mm, "pitch_um": pitch_um, "frames": int(self.rng.integers(8, 15)),
            "seconds": short_seconds(focal_mm, pitch_um), "latitude": latitude,
            "azimuth": self.real(0, 360), "altitude": self.real(20, 70),
            "orientation": self.one(1, 1, 1, 6, 8), "format": self.one(*FORMATS),
            "stars": int(np.exp(self.real(np.log(100), np.log(1200)))),
            "ground": self.real(0, 0.4) if focal_mm < 80 else 0.0,
            "true_focal": self.real(0.985, 1.015), "k1": self.real(-0.02, 0.02),
            "subseconds": self.one(True, True, False), "lens": self.lens(),
            "gap": self.real(1, 4)}
        return Night(self.name, **(facts | given))

    def lens(self, **given):
        core = {"fwhm": self.real(1.3, 3.2), "beta": self.one(0.0, 0.0, 3.5, 4.5)}
        return Lens(**(core | {"curvature": self.real(0, 0.6)} | given))

    def widening(self, night, low, high):
        """R.m.s. (√(Mxx + Myy), px) that widens the night's core by a factor drawn between both."""
        return np.sqrt(2 * night.lens.core_moment() * (self.real(low, high) ** 2 - 1))

    def disc(self):
        """Defocus that widens a core of 2 px clearly, px."""
        return self.real(3.2, 6.0)


def steady_defocus(lot):
    disc = lot.disc()
    return lot.usual(lens=lot.lens(fwhm=lot.real(1.4, 2.4)), defocus=lambda i: disc)


def focus_drift(lot):
    rate = lot.real(0.3, 0.7)
    return lot.usual(defocus=lambda i: rate * i)


def focus_some(lot):
    disc, frames = lot.disc(), lot.some(3, 8)
    return lot.usual(defocus=lambda i: disc if i in frames else 0.3)


def gusts(lot):
    return lot.usual(motions=(
        Gust(lot.some(2, 8), lot.real(1.8, 3), lot.real(0, 180), seed=lot.rng.integers(99)),
        Gust(lot.some(1, 8), lot.real(2, 4), lot.real(0, 180), seed=lot.rng.integers(99))))


def knock(lot):
    return lot.usual(motions=(
        Knock(int(lot.rng.integers(1, 7)), lot.real(0.2, 0.8), (lot.real(-9, 9), lot.real(3, 9))),))


def droop(lot):
    night = lot.usual(focal_mm=lot.one(50, 85, 135))
    px = lot.real(3, 7) / night.seconds  # a shutter's worth of it shows
    begin, end = np.sort(lot.rng.uniform(0, 8, 2)) * (night.seconds + night.gap)
    angle = lot.real(0.9, 2.2)
    night.motions = (Droop((px * np.cos(angle), px * np.sin(angle)), float(begin), float(end)),)
    return night


def droop_all(lot):
    """A head that sinks from the first frame to the last, mostly downwards in the picture."""
    night = lot.usual(focal_mm=lot.one(20, 24, 35, 50, 85, 135), frames=9)
    px = lot.widening(night, 1.35, 2.0) * np.sqrt(12) / night.seconds
    down = np.array(night.up()) * -1
    angle = lot.one(lot.real(-0.3, 0.3), lot.real(-0.3, 0.3), lot.real(-np.pi, np.pi))
    turned = down[0] * np.cos(angle) - down[1] * np.sin(angle), down[0] * np.sin(angle) + down[1] * np.cos(angle)
    night.motions = (Droop((px * turned[0], px * turned[1])),)
    return night


def hand(lot):
    return lot.usual(gap=lot.real(3, 6), motions=(
        Hand(lot.some(3, 8), lot.real(6, 12), lot.real(0.8, 2), direction_deg=lot.real(0, 180)),))


def tilt(lot):
    angle, size = lot.real(0, 2 * np.pi), lot.real(5, 10)
    return lot.usual(focal_mm=lot.one(14, 20, 24, 35), stars=int(lot.real(200, 900)), lens=lot.lens(
        fwhm=lot.real(1.4, 2.4), tilt=(size * np.cos(angle), size * np.sin(angle))))


def coma(lot):
    return lot.usual(focal_mm=lot.one(14, 20, 24), stars=int(lot.real(300, 1200)), lens=lot.lens(
        fwhm=lot.real(1.4, 2.2), coma=lot.real(4, 7), astigmatism=lot.real(0.5, 2)))


def curvature(lot):
    return lot.usual(focal_mm=lot.one(14, 24, 35), stars=int(lot.real(300, 900)), lens=lot.lens(
        fwhm=lot.real(1.4, 2.2), curvature=lot.real(7, 11), astigmatism=lot.real(0, 3)))


def dew(lot):
    begin, rate = int(lot.rng.integers(0, 4)), lot.real(0.04, 0.08)
    grown = lambda i: max(0, i - begin)
    return lot.usual(frames=12, stars=int(lot.real(200, 900)),
                     light=lambda i: max(0.3, 1 - rate * grown(i)),
                     halo=lambda i: (min(0.4, 0.8 * rate * grown(i)), 13.0))


def dewy_throughout(lot):
    share, width = lot.real(0.25, 0.4), lot.real(10, 16)
    return lot.usual(stars=int(lot.real(300, 900)), light=lambda i: 0.7, halo=lambda i: (share, width))


def cloud(lot):
    first, depth = int(lot.rng.integers(1, 6)), lot.real(0.35, 0.6)
    passing = {first: 0.8, first + 1: depth, first + 2: depth, first + 3: 0.85}
    return lot.usual(patchy=lot.real(0, 0.25), light=lambda i: passing.get(i, 1.0))


def poor_mount(lot):
    return lot.usual(focal_mm=lot.one(85, 135), seconds=60, sky=12, frames=9, orientation=1,
                     mount_error_deg=lot.real(2.5, 5))


def trailing(lot):
    night = lot.usual()
    long = round(night.seconds * lot.real(5, 9))
    some = lot.some(4, 8)
    night.exposure = lambda i: long if i in some else night.seconds
    return night


def trailing_all(lot):
    night = lot.usual(latitude=lot.real(-35, 35), altitude=lot.real(40, 60), azimuth=lot.one(90, 270))
    night.seconds = float(round(night.seconds * lot.real(6, 9)))
    return night


def declination_cosine(night):
    forward = optics.aim(night.azimuth, night.altitude)[2]
    return np.sqrt(1 - (forward @ optics.pole(night.latitude)) ** 2)


def near_trailing(lot):
    """Trails that widen about as much as names them, of some frames or of all."""
    night = lot.usual(latitude=lot.real(-35, 35), altitude=lot.real(40, 60), azimuth=lot.one(90, 270),
                      focal_mm=lot.one(24, 35, 50, 85, 135), frames=9)
    px = lot.widening(night, 1.12, 1.4) * np.sqrt(12)
    speed = night.camera().focal_px * np.radians(DEGREES_PER_SECOND) * declination_cosine(night)
    long, some = float(round(px / speed, 1)), lot.one(range(9), lot.some(5, 9))
    short = night.seconds = min(night.seconds, long)
    night.exposure = lambda i: long if i in some else short
    return night


def near_gusts(lot):
    night = lot.usual(frames=9)
    night.motions = tuple(
        Gust((i,), lot.widening(night, 1.12, 1.4), lot.real(0, 180), seed=lot.rng.integers(99))
        for i in lot.some(5, 9))
    return night


def near_focus(lot):
    night, some = lot.usual(frames=9), lot.some(5, 9)
    discs = {i: np.sqrt(8) * lot.widening(night, 1.12, 1.4) for i in some}
    night.defocus = lambda i: discs.get(i, 0.2)
    return night


def moonlit(lot):
    some, disc = lot.some(3, 8), lot.disc()
    return lot.usual(sky=700, gradient=1.5, iso=1600, stars=250, defocus=lambda i: disc if i in some else 0)


def city(lot):
    return lot.usual(sky=600, gradient=2.5, lamps=40, ground=0.3, stars=200, focal_mm=lot.one(24, 35),
                     motions=(Gust(lot.some(3, 8), lot.real(2, 3), lot.real(0, 180)),))


def mixed(lot):
    night = lot.usual()
    short, long = night.seconds, round(night.seconds * 4.5, 1)
    disc, blurred = lot.real(2.5, 3.5), lot.some(4, 8)
    night.exposure = lambda i: long if i % 3 == 1 else short
    night.defocus = lambda i: disc if i in blurred else 0.2
    night.motions = (Gust(lot.some(3, 8), lot.real(1.3, 2.2), lot.real(0, 180)),)
    return night


def sharp(lot):
    return lot.usual()


def sharp_wide(lot):
    return lot.usual(lens=lot.lens(fwhm=lot.real(2.8, 3.2)))


TROUBLES = {
    maker.__name__.replace("_", "-"): maker
    for maker in (steady_defocus, focus_drift, focus_some, gusts, knock, droop, droop_all, hand, tilt, coma,
                  curvature, dew, dewy_throughout, cloud, poor_mount, trailing, trailing_all, moonlit,
                  city, mixed, sharp, sharp_wide, near_trailing, near_gusts, near_focus)}


def drawn(name):
    """The nights of a name: drawn-7 all of that number, drawn-7-gusts one."""
    _, number, *trouble = name.split("-", 2)
    return [TROUBLES[one](Lot(int(number), one)) for one in (trouble or TROUBLES)]
