"""What moves the camera of other_nights.py. Nothing here is shared with Rondure.

Every motion answers with the shift it gives the image at its centre (px right, px down) and its
roll (rad), at times of the night. `shot` says which frame is exposed: number, start, seconds.
"""
import dataclasses

import numpy as np


@dataclasses.dataclass
class Gust:
    """Wind on some frames: a swaying head, several tones under a slow envelope, mostly one way."""

    frames: tuple
    rms_px: float  # √(Mxx + Myy) at the centre
    direction_deg: float = 10.0
    hz: float = 4.0
    across: float = 0.25
    roll: float = 0.15  # of the shift, at the corner
    seed: int = 1

    def shift(self, t, shot):
        if shot.number not in self.frames:
            return np.zeros((len(t), 3))
        rng = np.random.default_rng([self.seed, shot.number])
        waves = [self.swing(rng, t, shot) * size for size in (1, self.across, self.roll)]
        power = np.sqrt(np.var(waves[0]) + np.var(waves[1]))
        along, side, roll = (wave * self.rms_px / power for wave in waves)
        angle = np.radians(self.direction_deg)
        c, s = np.cos(angle), np.sin(angle)
        return np.stack([along * c - side * s, along * s + side * c, roll / shot.corner_px], 1)

    def swing(self, rng, t, shot):
        envelope = 1 + 0.7 * np.sin(2 * np.pi * (t - shot.start) / shot.seconds * 1.3
                                    + rng.uniform(0, 6.28))
        tones = sum(np.sin(2 * np.pi * self.hz * f * t + rng.uniform(0, 6.28)) * w
                    for f, w in ((1, 1), (1.37, 0.5), (0.61, 0.4)))
        return envelope * tones / np.std(tones)


@dataclasses.dataclass
class Knock:
    """A step during one frame that stays, with a ring-down of the legs."""

    frame: int
    at: float  # share of the exposure
    step_px: tuple
    ring_px: float = 3.0
    ring_s: float = 0.6
    hz: float = 6.0

    def shift(self, t, shot):
        if shot.number < self.frame:
            return np.zeros((len(t), 3))
        size = np.hypot(*self.step_px)
        unit = np.array(self.step_px) / size
        if shot.number > self.frame:
            return np.outer(np.ones(len(t)), [*self.step_px, 0])
        after = t - shot.start - self.at * shot.seconds
        move = size / (1 + np.exp(-np.clip(after / 0.03, -50, 50)))
        ring = self.ring_px * np.exp(-np.maximum(after, 0) / self.ring_s) * (after > 0)
        ring = ring * np.sin(2 * np.pi * self.hz * after)
        side = np.array([-unit[1], unit[0]])
        return np.hstack([np.outer(move + 0.6 * ring, unit) + np.outer(ring, side),
                          np.zeros((len(t), 1))])


@dataclasses.dataclass
class Droop:
    """A head that sinks at a steady speed between two times."""

    px_per_s: tuple
    begin: float = 0.0
    end: float = 1e9

    def shift(self, t, shot):
        moved = np.clip(t, self.begin, self.end) - self.begin
        return np.hstack([np.outer(moved, self.px_per_s), np.zeros((len(t), 1))])


@dataclasses.dataclass
class Hand:
    """A finger on the shutter at the start of some exposures: tremor that dies away."""

    frames: tuple
    size_px: float = 8.0
    decay_s: float = 1.5
    hz: float = 4.0
    direction_deg: float = 70.0

    def shift(self, t, shot):
        if shot.number not in self.frames:
            return np.zeros((len(t), 3))
        since = t - shot.start
        fade = self.size_px * np.exp(-since / self.decay_s)
        angle = np.radians(self.direction_deg)
        along = fade * np.sin(2 * np.pi * self.hz * since + 0.5) + 0.3 * fade
        side = 0.3 * fade * np.sin(2 * np.pi * self.hz * 0.53 * since)
        c, s = np.cos(angle), np.sin(angle)
        return np.stack([along * c - side * s, along * s + side * c, 0 * t], 1)


@dataclasses.dataclass
class Aim:
    """Turned to another part of the sky from a frame on."""

    frame: int
    step_px: tuple

    def shift(self, t, shot):
        on = float(shot.number >= self.frame)
        return np.outer(np.ones(len(t)), [self.step_px[0] * on, self.step_px[1] * on, 0])
