#!/usr/bin/python3
"""Long nights from the second simulator with a programme of happenings, to judge events.

    other_long.py DIR long-N …              renders the nights drawn by the numbers N: DIR/full/NIGHT
                                            with EXIF, DIR/programme/NIGHT.json
    other_long.py --score DIR OUT NIGHT …   compares OUT/NIGHT/night.json with the programmes

Fifty frames, one a minute, from a fixed tripod; four or five happenings a night, drawn by lot and
apart from each other: a knock of 2 to 12 px, gusts that widen the stars by 30 to 100 % in two to
four frames, a head that sinks by 0.6 to 4 px a minute, a focus that creeps until stars are 30 to
90 % wider, cloud that takes 0.35 to 1.2 magnitudes, dew, a sky that brightens by 0.6 to 1.5
magnitudes. A happening is found when an event of its kind overlaps it and begins within a frame of
where it is first as large as must be found (knock 2 px, widening 25 %, 0.3 and 0.5 mag; a creep or
a droop begins where it begins); an event beside all happenings is false.
"""
import dataclasses
import json
import multiprocessing
import pathlib
import shutil
import sys

import numpy as np

import other_nights as nights
from other_draw import Lot
from other_motion import Droop, Gust, Knock

FRAMES, STEP_SECONDS = 50, 60.0
KINDS = ("knock", "gusts", "droop", "focusCreep", "cloud", "dew", "skyBrighter")
LATE = ("focusCreep", "dew", "skyBrighter")  # go on to the end


@dataclasses.dataclass
class Happening:
    kind: str
    first: int
    last: int
    seen_from: int
    size: float


def programme(lot):
    """Kinds and the frames they may take, none beside another."""
    kinds = [str(kind) for kind in lot.rng.permutation(KINDS[:3] + ("cloud",))[: int(lot.rng.integers(3, 5))]]
    late = lot.one(*LATE)
    slots = [(6 + 8 * i, 11 + 8 * i) for i in range(4)]
    places = {kind: slots[i] for i, kind in enumerate(kinds)}
    places[late] = (39, FRAMES - 1)
    return places


def long_night(number):
    lot = Lot(number, "long")
    focal_mm = lot.one(20, 24, 35, 50)
    night = lot.usual(focal_mm=focal_mm, pitch_um=6.0, frames=FRAMES, orientation=lot.one(1, 1, 6),
                      stars=int(lot.real(250, 700)), format=lot.one("dng", "tif", "jpg94"), subseconds=True)
    night.name = f"long-{number}"
    night.gap = STEP_SECONDS - night.seconds
    happenings, motions, changes = [], [], {"defocus": {}, "loss": {}, "halo": {}, "bright": {}}
    for kind, (first, last) in programme(lot).items():
        happenings.append(MAKERS[kind](lot, night, first, last, motions, changes))
    night.motions = tuple(motions)
    night.defocus = lambda i: changes["defocus"].get(i, 0.2)
    night.light = lambda i: 10 ** (-0.4 * changes["loss"].get(i, 0.0))
    night.halo = lambda i: changes["halo"].get(i, (0.0, 1.0))
    night.glow = lambda i: 10 ** (0.4 * changes["bright"].get(i, 0.0))
    return night, happenings


def knock(lot, night, first, last, motions, changes):
    frame, angle, size = lot.one(first, first + 1, first + 2), lot.real(0, 2 * np.pi), lot.real(2.2, 12)
    motions.append(Knock(frame, lot.one(-0.5, lot.real(0.2, 0.8)), (size * np.cos(angle), size * np.sin(angle)), 0.5))
    return Happening("knock", frame, frame, frame, size)


def gusts(lot, night, first, last, motions, changes):
    frames, widening = tuple(range(first, first + lot.one(2, 3, 4))), lot.real(1.3, 2.0)
    rms = np.sqrt(2 * night.lens.core_moment() * (widening**2 - 1))
    motions.append(Gust(frames, rms, lot.real(0, 180), seed=int(lot.rng.integers(99))))
    return Happening("gusts", frames[0], frames[-1], frames[0], widening)


def droop(lot, night, first, last, motions, changes):
    """Frames of whose minutes the head sinks, from the start of one to that of another."""
    rate, angle = lot.real(0.6, 4), lot.real(0, 2 * np.pi)
    end = last + 2
    motions.append(Droop((rate / 60 * np.cos(angle), rate / 60 * np.sin(angle)), STEP_SECONDS * first, STEP_SECONDS * end))
    return Happening("droop", first, end, first, rate)


def focus_creep(lot, night, first, last, motions, changes):
    widening = lot.real(1.3, 1.9)
    most = np.sqrt(16 * night.lens.core_moment() * (widening**2 - 1))
    for i in range(first, FRAMES):
        changes["defocus"][i] = max(0.2, most * (i - first) / (FRAMES - 1 - first))
    return Happening("focusCreep", first, FRAMES - 1, first, widening)


def cloud(lot, night, first, last, motions, changes):
    frames, most = range(first, first + lot.one(3, 4, 5)), lot.real(0.35, 1.2)
    for i in frames:
        changes["loss"][i] = most * (0.6 if i in (frames[0], frames[-1]) else 1)
    seen = [i for i in frames if changes["loss"][i] >= 0.3]
    return Happening("cloud", frames[0], frames[-1], seen[0], most)


def dew(lot, night, first, last, motions, changes):
    most = lot.real(0.5, 1.1)
    for i in range(first, FRAMES):
        grown = (i - first) / (FRAMES - 1 - first)
        changes["loss"][i] = most * grown
        changes["halo"][i] = (0.3 * grown, 14.0)
    lost = [changes["loss"][i] - 2.5 * np.log10(1 - changes["halo"][i][0]) for i in range(first, FRAMES)]
    return Happening("dew", first, FRAMES - 1, first + int(np.argmax(np.array(lost) >= 0.3)), float(lost[-1]))


def sky_brighter(lot, night, first, last, motions, changes):
    most = lot.real(0.6, 1.5)
    for i in range(first, FRAMES):
        changes["bright"][i] = most * (i - first) / (FRAMES - 1 - first)
    seen = next(i for i in range(first, FRAMES) if changes["bright"][i] >= 0.5)
    return Happening("skyBrighter", first, FRAMES - 1, seen, most)


MAKERS = {"knock": knock, "gusts": gusts, "droop": droop, "focusCreep": focus_creep, "cloud": cloud,
          "dew": dew, "skyBrighter": sky_brighter}


def render_frame(work):
    name, number, folder = work
    night, _ = long_night(int(name.split("-")[1]))
    nights.render_of(night, number, folder)


def render(root, names):
    (root / "programme").mkdir(parents=True, exist_ok=True)
    with multiprocessing.Pool(2) as pool:
        for name in names:
            night, happenings = long_night(int(name.split("-")[1]))
            for variant in ("bare", "full"):
                shutil.rmtree(root / variant / name, ignore_errors=True)
            (root / "bare" / name).mkdir(parents=True)
            pool.map(render_frame, [(name, i, root) for i in range(night.frames)], 1)
            nights.described(night, root / "bare" / name, lambda i: (root / "full" / name, "P2"))
            shutil.rmtree(root / "bare" / name)
            told = [dataclasses.asdict(h) for h in happenings]
            (root / "programme" / f"{name}.json").write_text(json.dumps(told, indent=1))
            print(name, f"{night.focal_mm} mm {night.format}", told, flush=True)


def events_of(file):
    book = json.loads(file.read_text())
    files = [frame["file"] for frame in book["frames"]]
    places = {name: i for i, name in enumerate(sorted(files))}
    return [(e["kind"], places[e["firstFile"]], places[e["lastFile"]], e["sizes"]) for e in book["events"]]


def score(root, out, names):
    totals, false, quiet, late = {}, [], 0, []
    for name in names:
        happenings = [Happening(**h) for h in json.loads((root / "programme" / f"{name}.json").read_text())]
        events = events_of(out / name / "night.json")
        used = set()
        for h in happenings:
            mine = [i for i, (kind, first, last, _) in enumerate(events)
                    if kind == h.kind and first <= h.last + 1 and last >= h.first - 1]
            used.update(mine)
            if h.kind == "cloud":  # it sends light back
                used.update(i for i, (kind, first, last, _) in enumerate(events)
                            if kind == "skyBrighter" and first >= h.first - 1 and last <= h.last + 1)
            begins = min((events[i][1] for i in mine), default=None)
            on_time = begins is not None and h.first - 1 <= begins <= h.seen_from + 1
            total = totals.setdefault(h.kind, [0, 0, 0])
            total[0] += 1
            total[1] += bool(mine)
            total[2] += on_time
            if not on_time:
                late.append(f"{name} {h} found {[events[i] for i in mine]}")
        busy = {i for h in happenings for i in range(h.first - 1, h.last + 2)}
        quiet += sum(i not in busy for i in range(FRAMES))
        false += [f"{name} {event}" for i, event in enumerate(events) if i not in used]
    print("| happening | drawn | found | begin right to a frame |\n|---|---|---|---|")
    for kind in KINDS:
        if kind in totals:
            print(f"| {kind} | {' | '.join(str(n) for n in totals[kind])} |")
    print(f"{len(false)} events beside, {quiet} quiet frames")
    print(*late, *(f"beside: {one}" for one in false), sep="\n")


if __name__ == "__main__":
    if sys.argv[1] == "--score":
        score(pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3]), sys.argv[4:])
    else:
        render(pathlib.Path(sys.argv[1]), sys.argv[2:])
