#!/usr/bin/python3
"""Whole nights from a second simulator, written apart from the first, to judge the program.

It shares no code with Rondure. Stars turn about the pole and the camera about its axes while the
shutter is open; a lens with distortion, field curvature, tilt, astigmatism, coma and vignetting
sees them; light comes with photon and read noise over a sky with a gradient and a foreground with
lamps; the files are what a photographer would have (DNG mosaics, 16-bit TIFF, 8-bit JPEG).

    other_nights.py DIR [NIGHT …]   renders the nights of other_scenes.py (all, or those named;
                                    drawn-7 for those other_draw.py draws by 7):
                                    DIR/bare/NIGHT    files without EXIF
                                    DIR/full/NIGHT    with EXIF
                                    DIR/groups/NIGHT  three neighbours each, a camera of their own
                                    DIR/lone/NIGHT    each frame from a camera of its own
                                    DIR/truth/NIGHT.json
    other_score.py DIR rondure.jar  runs the program over them and says how it did

Needs numpy, scipy, Pillow and exiftool; about a second of one core for each megapixel.

The truth of a frame: the shares of the excess in px² (mean of the two axes, median over its stars)
from the paths, discs and rays painted. focus is the disc of the field's mean signed defocus, lens
is all that varies over the field, trailing the sky's path with the camera held still, tripod what
the camera's own motion adds to that. The core's share is that of the Gaussian of its half-maximum
width, with the pixel's 1/12 (a Moffat core has wings beyond). A cause is named when all together
make the star 25 % wider than the core (r.m.s.), or the lens 60 % in the outer fifth; then it is
the one with the largest share; else haze when the stars lose 35 % of their light, dew's halo
included; else none. On a mount that follows the sky badly, what remains is trailing or tripod.
"""
import dataclasses
import json
import multiprocessing
import pathlib
import shutil
import subprocess
import sys

import numpy as np
from scipy import ndimage

import other_formats
import other_optics as optics

BLACK, WHITE, COUNTS_PER_ELECTRON, READ_NOISE = 512, 16383, 0.25, 4.0
SKY_OF_COLOUR, STAR_OF_COLOUR = (0.7, 1.0, 0.85), (0.8, 1.0, 0.9)
MAGNITUDE_SLOPE = 1.2  # N(> flux) ∝ flux^-1.2
FAINTER = 3.5  # how far the catalogue goes below the stars that count
COUNTED_SNR = 25
PATH_STEPS, SHAKEN_STEPS = 24, 320
CAUSES = ("focus", "trailing", "tripod", "lens", "haze")


@dataclasses.dataclass
class Night:
    """One set of frames. Functions take the number of the frame."""

    name: str
    seconds: float = 10.0  # as the camera says
    true_seconds: float = 0.0  # as it is; 0 = the same
    gap: float = 2.0
    frames: int = 10
    focal_mm: float = 24.0
    true_focal: float = 1.0  # of the nominal one
    pitch_um: float = 5.0
    size: tuple = (1200, 800)
    k1: float = 0.0
    latitude: float = 45.0
    azimuth: float = 150.0
    altitude: float = 40.0
    orientation: int = 1
    lens: optics.Lens = dataclasses.field(default_factory=optics.Lens)
    stars: int = 300
    sky: float = 30.0  # electrons of a green pixel per second
    gradient: float = 0.4
    ground: float = 0.15  # share of the height
    lamps: int = 4
    format: str = "dng"
    subseconds: bool = True
    f_number: float = 2.8
    iso: int = 3200
    motions: tuple = ()
    mount_error_deg: float = -1.0  # a mount that follows the sky, this far off; < 0 = a tripod
    defocus: object = None
    exposure: object = None  # seconds as the camera says, when they change
    light: object = None  # what cloud and dew let through
    patchy: float = 0.0
    halo: object = None  # (share, FWHM px) of dew's glow
    glow: object = None  # how many times brighter the sky is
    vignetting: float = 0.35
    demosaic: bool = False
    black: float = 0.0  # share of the sky that the JPEG's black point cuts off

    def seed(self):
        return [ord(letter) for letter in self.name]

    def camera(self):
        return optics.Camera(*self.size, self.focal_mm * self.true_focal * 1000 / self.pitch_um,
                             self.k1, (0.004 * self.size[0], -0.003 * self.size[1]))

    def axes(self):
        roll = {1: 0, 3: 180, 6: -90, 8: 90}[self.orientation]
        return optics.aim(self.azimuth, self.altitude, roll)

    def up(self):
        """The way up on the sensor."""
        return {1: (0, -1), 3: (0, 1), 6: (-1, 0), 8: (1, 0)}[self.orientation]


@dataclasses.dataclass
class Shot:
    number: int
    start: float
    seconds: float
    said: float
    corner_px: float


def shots(night):
    made, start = [], 0.0
    for number in range(night.frames):
        said = night.exposure(number) if night.exposure else night.seconds
        true = said * (night.true_seconds / night.seconds if night.true_seconds else 1)
        made.append(Shot(number, start, true, said, np.hypot(*night.size) / 2))
        start += true + night.gap
    return made


def turns(night, camera, t, shot):
    """Rotation vectors of the image (k, 3), camera axes, from all motions."""
    total = sum((motion.shift(t, shot) for motion in night.motions), np.zeros((len(t), 3)))
    return np.stack([-total[:, 1] / camera.focal_px, total[:, 0] / camera.focal_px, total[:, 2]], 1)


def sky_vectors(night, vectors, t):
    """World vectors (n, 3) in the axes of the camera at rest at times t: (n, k, 3)."""
    pole = optics.pole(night.latitude)
    turned = optics.rotated(vectors, np.outer(-optics.OMEGA * t, pole))
    if night.mount_error_deg >= 0:
        axis = optics.pole(night.latitude + night.mount_error_deg)
        turned = optics.rotated(turned, np.outer(optics.OMEGA * t, axis))
    return turned @ night.axes().T


def catalogue(night, camera, rng):
    """Stars all over what the frames can see, world axes at the first exposure's start; and the
    electrons per second of each."""
    made = shots(night)
    span = made[-1].start + made[-1].seconds
    moved = max(np.abs(turns(night, camera, s.start + np.linspace(0, s.seconds, 50), s)).max()
                for s in made)
    half = np.arctan(np.hypot(camera.width, camera.height) / 2 / camera.focal_px)
    travel = 0 if night.mount_error_deg >= 0 else optics.OMEGA * span
    reach = min(np.pi, half * 1.05 + travel + moved)
    frame_area = camera.width * camera.height / camera.focal_px**2
    noise = np.sqrt(night.sky * night.seconds + READ_NOISE**2)
    counted = COUNTED_SNR * noise * np.sqrt(4 * np.pi * night.lens.core_moment()) / night.seconds
    number = night.stars * FAINTER**MAGNITUDE_SLOPE
    number = int(number * 2 * np.pi * (1 - np.cos(reach)) / frame_area)
    up = rng.uniform(np.cos(reach), 1, number)
    about = rng.uniform(0, 2 * np.pi, number)
    out = np.sqrt(1 - up**2)
    at = np.stack([out * np.cos(about), out * np.sin(about), up], 1) @ night.axes()
    rate = counted / FAINTER * rng.uniform(0, 1, number) ** (-1 / MAGNITUDE_SLOPE)
    return at, np.minimum(rate, counted * 3000)


def height_above_ground(night, rng):
    """Distance above the skyline, px, over the frame."""
    width, height = night.size
    y, x = np.mgrid[:height, :width].astype(np.float32)
    ux, uy = night.up()
    along = x * uy + y * -ux if ux else x
    side = height if uy else width
    hill = sum(a * np.sin(along / (w * side) * 6.28 + rng.uniform(0, 6.28))
               for a, w in ((0.03, 0.7), (0.012, 0.21), (0.004, 0.06)))
    from_bottom = {(0, -1): height - 1 - y, (0, 1): y, (-1, 0): width - 1 - x, (1, 0): x}[(ux, uy)]
    return from_bottom - side * (night.ground + hill * (night.ground > 0)) - (
        0 if night.ground else -1e6)


def lamps(night, camera, clear, rng):
    """Places on the ground as vectors in the axes of the camera at rest; electrons per second."""
    rows, columns = np.nonzero((clear < -6) & (clear > -0.12 * camera.height))
    if not len(rows) or not night.lamps:
        return np.zeros((0, 3)), np.zeros(0)
    chosen = rng.choice(len(rows), night.lamps)
    x = (columns[chosen] - (camera.width - 1) / 2 - camera.centre[0]) / camera.focal_px
    y = (rows[chosen] - (camera.height - 1) / 2 - camera.centre[1]) / camera.focal_px
    at = np.stack([x, y, np.ones(len(x))], 1)
    bright = 10 ** rng.uniform(3.7, 5.3, night.lamps) / night.seconds
    return at / np.linalg.norm(at, axis=1)[:, None], bright


def pictured(night, camera, paths, flux, frame):
    """What paint() needs of points with paths (x, y) (n, k)."""
    x, y = paths
    u, v = camera.field(x.mean(1), y.mean(1))
    radius = np.maximum(np.hypot(u, v), 1e-9)
    radial, across = night.lens.discs(frame["defocus"], u, v)
    return {"x": x, "y": y, "flux": flux, "radial": radial, "across": across,
            "coma": night.lens.coma * radius**2, "cos": u / radius, "sin": v / radius}


def light(night, shot, frame, rng_static):
    """Electrons of the green light of sky and of points over the frame, and the truth."""
    camera = night.camera()
    at, rate = catalogue(night, camera, rng_static)
    clear = height_above_ground(night, rng_static)
    lamp_at, lamp_rate = lamps(night, camera, clear, rng_static)
    texture = ground_texture(night, rng_static)
    steps = SHAKEN_STEPS if any(hasattr(m, "hz") for m in night.motions) else PATH_STEPS
    t = shot.start + (np.arange(steps) + 0.5) / steps * shot.seconds
    turn = turns(night, camera, t, shot)
    rest = sky_vectors(night, at, t[[steps // 2]])[:, 0]
    x, y = camera.project(optics.rotated(rest, turn.mean(0, keepdims=True))[:, 0])
    near = (x > -40) & (x < camera.width + 40) & (y > -40) & (y < camera.height + 40)
    at, rate = at[near], rate[near]
    held = sky_vectors(night, at, t)
    paths = camera.project(optics.rotated(held, turn))
    still = camera.project(optics.rotated(held, np.broadcast_to(turn.mean(0), turn.shape)))
    shine = np.zeros((camera.height, camera.width), np.float32)
    shifted = np.rint(turn.mean(0) * camera.focal_px).astype(int)
    clear = np.roll(clear, (-shifted[0], shifted[1]), (0, 1))
    veil = cloud(night, shot, frame)
    column = np.clip(paths[0].mean(1), 0, camera.width - 1).astype(int)
    row = np.clip(paths[1].mean(1), 0, camera.height - 1).astype(int)
    flux = rate * shot.seconds * veil[row, column] * frame["gain"]
    stars = pictured(night, camera, paths, flux, frame)
    optics.paint(shine, stars, night.lens.core_transform(), frame["halo"])
    shine *= np.clip(clear / 2 + 0.5, 0, 1) * vignetting(night, camera)
    told = truth(night, camera, frame, stars, still, clear[row, column] > 5, veil[row, column])
    told["trailPx"], told["pole"] = trail(night, still, told.pop("chosen"), t, turn)
    if len(lamp_at):
        lamp_paths = camera.project(optics.rotated(lamp_at, turn))
        lit = pictured(night, camera, lamp_paths, lamp_rate * shot.seconds * frame["gain"], frame)
        optics.paint(shine, lit, night.lens.core_transform(), frame["halo"])
    return sky(night, shot, frame, clear, texture, veil), shine, told


def ground_texture(night, rng):
    coarse = rng.uniform(0.03, 0.3, (night.size[1] // 8 + 2, night.size[0] // 8 + 2))
    soft = ndimage.gaussian_filter(coarse.astype(np.float32), 1.5)
    return ndimage.zoom(soft, 8, order=1)[: night.size[1], : night.size[0]]


def vignetting(night, camera):
    y, x = np.mgrid[: camera.height, : camera.width].astype(np.float32)
    u, v = camera.field(x, y)
    return 1 - night.vignetting * (u * u + v * v)


def cloud(night, shot, frame):
    """What the air lets through, over the frame."""
    width, height = night.size
    veil = np.full((height, width), frame["light"], np.float32)
    if night.patchy and frame["light"] < 0.98:
        rng = np.random.default_rng(night.seed() + [shot.number, 7])
        waves = ndimage.zoom(ndimage.gaussian_filter(rng.normal(size=(16, 16)), 2), (
            height / 16 + 0.1, width / 16 + 0.1), order=1)[:height, :width]
        veil = np.clip(veil * (1 + night.patchy * waves / waves.std()), 0.02, 1)
    return veil


def sky(night, shot, frame, clear, texture, veil):
    camera = night.camera()
    level = night.sky * shot.seconds * frame["gain"] * frame["glow"] * (1 + 0.8 * (1 - veil))
    along = np.clip(clear, 0, None) / max(night.size)
    glow = 1 + night.gradient * np.exp(-along / 0.25)
    share = np.clip(clear / 2 + 0.5, 0, 1)
    return level * vignetting(night, camera) * (share * glow + (1 - share) * texture)


def trail(night, still, chosen, t, turn):
    """Median length of the sky's path over the stars, px; the pole in camera axes."""
    steps = still[0].shape[1]
    chord = np.hypot(still[0][:, -1] - still[0][:, 0], still[1][:, -1] - still[1][:, 0])
    pole = optics.pole(night.latitude)[None] @ night.axes().T
    pole = optics.rotated(pole, turn.mean(0, keepdims=True))[0, 0]
    return float(np.median(chord[chosen]) * steps / (steps - 1)), pole.tolist()


def truth(night, camera, frame, stars, still, in_sky, veil):
    x, y = stars["x"].mean(1), stars["y"].mean(1)
    inside = (x > 5) & (x < camera.width - 6) & (y > 5) & (y < camera.height - 6)
    seconds = np.quantile(stars["flux"][inside & in_sky], 0.5)
    chosen = inside & in_sky & (stars["flux"] > seconds)
    whole = optics.covariance(stars["x"], stars["y"])[chosen]
    sky_path = optics.covariance(*still)[chosen]
    radial, across, coma = (stars[key][chosen] for key in ("radial", "across", "coma"))
    blur = (radial**2 + across**2) / 32 + coma**2 / 3
    focus = np.full(len(blur), frame["defocus"] ** 2 / 16)
    dew = frame["halo"][0] * (frame["halo"][1] * optics.RMS_PER_FWHM) ** 2
    each = {"focus": focus, "lens": blur - focus,
            "trailing": (sky_path[:, 0] + sky_path[:, 2]) / 2,
            "tripod": (whole - sky_path)[:, [0, 2]].sum(1) / 2,
            "haze": np.full(len(blur), dew)}
    u, v = camera.field(x[chosen], y[chosen])
    edge = np.hypot(u, v) >= np.quantile(np.hypot(u, v), 0.8)
    middle = whole - sky_path
    nearest = np.argsort(np.hypot(u, v))[:5]
    core = night.lens.core_moment() + 0.25 * night.demosaic
    told = {"core": core, "transparency": float(np.median(veil[chosen]) * (1 - frame["halo"][0])),
            "sky": {cause: float(np.median(each[cause])) for cause in CAUSES},
            "edge": {cause: float(np.median(each[cause][edge])) for cause in CAUSES},
            "discPx": abs(frame["defocus"]), "stars": int(chosen.sum()),
            "tripodRmsPx": float(np.sqrt(max(0, np.median(middle[nearest][:, [0, 2]].sum(1))))),
            "chosen": chosen}
    return told | named(told, night)


def named(told, night):
    """The rule of the head. Dew's halo is judged by the light it takes, not by its moment."""
    sharing = {cause: told["sky"][cause] for cause in CAUSES[:4]}
    excess = sum(sharing.values())
    widening = np.sqrt(1 + max(0, excess) / told["core"])
    outer = {cause: told["edge"][cause] for cause in CAUSES[:4]}
    edge = np.sqrt(1 + max(0, sum(outer.values())) / told["core"])
    largest = max(sharing, key=sharing.get)
    hazy = told["transparency"] <= 0.65
    accepted, share = ["none"], 1.0
    if widening >= 1.25:
        accepted, share = [largest], sharing[largest] / excess
        accepted += ["haze"] if hazy else []
    elif hazy:
        accepted = ["haze"]
    elif edge >= 1.6 and max(outer, key=outer.get) == "lens":
        accepted = ["lens"]
    if night.mount_error_deg >= 0 and accepted[0] == "trailing":
        accepted += ["tripod"]
    return {"cause": accepted[0], "accepted": accepted, "widening": float(widening),
            "edgeWidening": float(edge), "largestShare": float(share)}


def exposed(rng, electrons, hot):
    """Counts from electrons, photon and read noise added."""
    many = electrons > 50
    noisy = electrons + np.sqrt(electrons + READ_NOISE**2) * rng.standard_normal(
        electrons.shape, np.float32)
    few = ~many
    noisy[few] = rng.poisson(electrons[few]) + READ_NOISE * rng.standard_normal(few.sum(), np.float32)
    return np.clip(np.rint((noisy + hot) * COUNTS_PER_ELECTRON + BLACK), 0, WHITE)


def hot_pixels(night):
    rng = np.random.default_rng(night.seed() + [3])
    hot = np.zeros((night.size[1], night.size[0]), np.float32)
    count = hot.size // 12000
    hot.flat[rng.integers(0, hot.size, count)] = rng.uniform(300, 9000, count)
    return hot


def demosaiced(mosaic):
    """Bilinear, RGGB."""
    cross = np.array([[0, 1, 0], [1, 4, 1], [0, 1, 0]]) / 4
    full = np.array([[1, 2, 1], [2, 4, 2], [1, 2, 1]]) / 4
    planes = []
    for letter, kernel in (("R", full), ("G", cross), ("B", full)):
        plane = np.zeros_like(mosaic)
        for i, colour in enumerate("RGGB"):
            if colour == letter:
                plane[i // 2 :: 2, i % 2 :: 2] = mosaic[i // 2 :: 2, i % 2 :: 2]
        planes.append(ndimage.convolve(plane, kernel, mode="mirror"))
    return np.stack(planes, -1)


def write(night, file, planes, background):
    if night.format == "dng":
        other_formats.dng()(file, planes)
        return
    if night.demosaic:
        planes = demosaiced(other_formats.mosaic(planes, "RGGB"))
    if night.format == "tif":
        other_formats.plain_tiff()(file, planes)
        return
    level = background * COUNTS_PER_ELECTRON
    cut = planes - level * night.black
    gain = 0.05 * (WHITE - BLACK) / max(level * (1 - night.black), 1e-6)
    gain = min(max(gain, 1), 40)
    image = other_formats.Image.fromarray(other_formats.eight_bit(cut, gain))
    image.save(file, "JPEG", quality=int(night.format[3:]), subsampling=1)


def frame_of(night, number):
    return {"defocus": night.defocus(number) if night.defocus else 0.0,
            "light": night.light(number) if night.light else 1.0,
            "halo": night.halo(number) if night.halo else (0.0, 1.0),
            "glow": night.glow(number) if night.glow else 1.0, "gain": 1.0}


def render_frame(work):
    name, number, folder = work
    return render_of(nights_of([name])[0], number, folder)


def render_of(night, number, folder):
    shot = shots(night)[number]
    frame = frame_of(night, shot.number)
    sky_light, shine, told = light(night, shot, frame, np.random.default_rng(night.seed()))
    rng = np.random.default_rng(night.seed() + [shot.number])
    hot = hot_pixels(night) * shot.seconds / 10
    planes = np.stack([exposed(rng, np.maximum(sky_light * b + shine * s, 0).astype(np.float32), hot)
                       for b, s in zip(SKY_OF_COLOUR, STAR_OF_COLOUR)], -1)
    name = f"{night.name}_{shot.number:02d}." + night.format.rstrip("0123456789")
    usual = night.sky * night.seconds
    write(night, folder / "bare" / night.name / name, planes, usual)
    return name, told | {"number": shot.number, "linear": not night.format.startswith("jpg")}


def exif(night, shot, model):
    start = shot.start + 0.37
    minute, second = divmod(int(start), 60)
    per_cm = 10_000 / night.pitch_um
    facts = {
        "Make": "Petrel", "Model": model, "ExposureTime": shot.said, "FNumber": night.f_number,
        "DateTimeOriginal": f"2026:03:14 {21 + minute // 60}:{minute % 60:02d}:{second:02d}",
        "ISO": night.iso, "FocalLength": night.focal_mm, "FocalPlaneXResolution": per_cm,
        "FocalPlaneYResolution": per_cm, "FocalPlaneResolutionUnit": "cm",
        "Orientation#": night.orientation}
    if night.subseconds:
        facts["SubSecTimeOriginal"] = f"{int(start % 1 * 100):02d}"
    return facts


def described(night, bare, places):
    """Copies of the bare files with EXIF: places maps (number of the frame) → (folder, model)."""
    facts = []
    for shot, file in zip(shots(night), sorted(bare.iterdir())):
        folder, model = places(shot.number)
        folder.mkdir(parents=True, exist_ok=True)
        shutil.copy(file, folder / file.name)
        facts.append({"SourceFile": str(folder / file.name)} | exif(night, shot, model))
    table = folder.parent / f"{night.name}.exif.json"
    table.write_text(json.dumps(facts))
    subprocess.run(["exiftool", "-q", "-m", "-overwrite_original", f"-json={table}",
                    *(fact["SourceFile"] for fact in facts)], check=True)
    table.unlink()


def variants(night, root):
    bare = root / "bare" / night.name
    described(night, bare, lambda i: (root / "full" / night.name, "P2"))
    whole = night.frames // 3 * 3
    described(night, bare, lambda i: (
        root / "groups" / night.name / f"g{min(i, whole - 1) // 3:02d}",
        f"P2 G{min(i, whole - 1) // 3}"))
    described(night, bare, lambda i: (root / "lone" / night.name / f"f{i:02d}", f"P2 F{i}"))


def nights_of(names):
    import other_draw
    import other_scenes

    known = {night.name: night for night in other_scenes.NIGHTS}
    return [night for name in names or known
            for night in (other_draw.drawn(name) if name.startswith("drawn-") else [known[name]])]


def render(root, nights):
    for folder in ("bare", "truth"):
        (root / folder).mkdir(parents=True, exist_ok=True)
    with multiprocessing.Pool(2) as pool:
        for night in nights:
            for variant in ("bare", "full", "groups", "lone"):
                shutil.rmtree(root / variant / night.name, ignore_errors=True)
            (root / "bare" / night.name).mkdir()
            told = dict(pool.map(render_frame, [(night.name, number, root) for number in range(night.frames)], 1))
            (root / "truth" / f"{night.name}.json").write_text(json.dumps(told, indent=1))
            variants(night, root)
            print(night.name, " ".join(f"{frame['cause']}:{frame['widening']:.2f}"
                                       for frame in told.values()), flush=True)


if __name__ == "__main__":
    render(pathlib.Path(sys.argv[1]), nights_of(sys.argv[2:]))
