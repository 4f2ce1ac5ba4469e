"""Files that other programs and cameras write, for other_night.py: counts of 14 bits with a black
level in, a file out. Nothing here is shared with Rondure's own writers."""
import io
import struct
import subprocess
import zlib

import numpy as np
from PIL import Image

BLACK, WHITE = 512, 16383
LETTERS = "RGB"


def linear(planes):
    return np.clip((planes - BLACK) / (WHITE - BLACK), 0, 1)


def srgb(light):
    """IEC 61966-2-1."""
    return np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)


def eight_bit(planes, gain=6):
    return np.rint(255 * srgb(np.clip(gain * linear(planes), 0, 1))).astype(np.uint8)


def mosaic(planes, cell):
    side = int(round(len(cell) ** 0.5))
    out = np.empty(planes.shape[:2])
    for i, letter in enumerate(cell):
        out[i // side :: side, i % side :: side] = planes[
            i // side :: side, i % side :: side, LETTERS.index(letter)]
    return out


SIZES = {1: "B", 2: "s", 3: "H", 4: "I", 10: "i"}


def tiff(file, tags, strips, order="<"):
    """A TIFF of one directory; tags as {number: (type, values)} (TIFF 6.0, section 2)."""
    out = bytearray((b"II" if order == "<" else b"MM") + struct.pack(order + "HI", 42, 0))
    offsets = []
    for strip in strips:
        offsets.append(len(out))
        out += strip + b"\0" * (len(strip) % 2)
    tags = dict(tags) | {273: (4, offsets), 279: (4, [len(strip) for strip in strips])}
    body = struct.pack(order + "H", len(tags))
    for number, (kind, values) in sorted(tags.items()):
        data = values if isinstance(values, bytes) else b"".join(
            struct.pack(order + SIZES[kind], value) for value in values)
        count = len(values) // (2 if kind == 10 else 1)
        if len(data) > 4:
            out += data + b"\0" * (len(data) % 2)
            data = struct.pack(order + "I", len(out) - len(data) - len(data) % 2)
        body += struct.pack(order + "HHI", number, kind, count) + data.ljust(4, b"\0")
    out[4:8] = struct.pack(order + "I", len(out))
    file.write_bytes(bytes(out) + body + b"\0" * 4)


def raster(values, order="<", kind="u2"):
    """Tags of the size, and the rows in strips of 50."""
    height, width = values.shape[:2]
    samples = values.shape[2] if values.ndim == 3 else 1
    tags = {
        256: (4, [width]), 257: (4, [height]), 258: (3, [8 * int(kind[1])] * samples),
        259: (3, [1]), 262: (3, [2 if samples == 3 else 1]), 277: (3, [samples]),
        278: (4, [50]), 284: (3, [1]), 339: (3, [3 if kind[0] == "f" else 1] * samples)}
    rows = [values[i : i + 50].astype(order + kind).tobytes() for i in range(0, height, 50)]
    return tags, rows


def plain_tiff(order="<", kind="u2", grey=False, deflate=False):
    def write(file, planes):
        values = linear(planes) * (1 if kind == "f4" else 65535)
        tags, rows = raster(values[..., 1] if grey else values, order, kind)
        if deflate:
            tags[259] = (3, [8])
            rows = [zlib.compress(row) for row in rows]
        tiff(file, tags, rows, order)
    return write


def planar_tiff(file, planes):
    tags, _ = raster(linear(planes) * 65535)
    rows = []
    for channel in range(3):
        rows += raster(linear(planes)[..., channel] * 65535)[1]
    tiff(file, tags | {284: (3, [2])}, rows)


def dng(cell="RGGB", order="<", border=(0, 0), table=False, demosaiced=False):
    def write(file, planes):
        values = planes if demosaiced else mosaic(planes, cell)
        height, width = values.shape[:2]
        if any(border):
            whole = np.full((height + border[0], width + border[1]), float(BLACK))
            whole[border[0] :, border[1] :] = values
            values = whole
        if table:
            values = np.sqrt(values / WHITE) * 4095
        tags, rows = raster(np.rint(values), order)
        side = int(round(len(cell) ** 0.5))
        tags |= {
            254: (4, [0]), 50706: (1, [1, 4, 0, 0]), 50708: (2, b"Petrel P2\0"),
            50714: (4, [BLACK] * (3 if demosaiced else 1)),
            50717: (4, [WHITE] * (3 if demosaiced else 1)),
            50721: (10, [1, 1, 0, 1, 0, 1, 0, 1, 1, 1, 0, 1, 0, 1, 0, 1, 1, 1]),
            262: (3, [34892 if demosaiced else 32803])}
        if not demosaiced:
            tags |= {33421: (3, [side, side]), 33422: (1, [LETTERS.index(c) for c in cell])}
        if any(border):
            tags[50829] = (4, [border[0], border[1], border[0] + height, border[1] + width])
        if table:
            codes = np.arange(4096) / 4095
            tags[50712] = (3, [int(code) for code in np.rint(codes**2 * WHITE)])
        tiff(file, tags, rows, order)
    return write


def jpeg(**settings):
    return lambda file, planes: Image.fromarray(eight_bit(planes)).save(file, "JPEG", **settings)


def png8(file, planes):
    Image.fromarray(eight_bit(planes)).save(file)


def png16(file, planes):
    rows = np.rint(linear(planes) * 65535).astype(">u2")
    raw = b"".join(b"\0" + row.tobytes() for row in rows)

    def chunk(name, data):
        check = struct.pack(">I", zlib.crc32(name + data))
        return struct.pack(">I", len(data)) + name + data + check

    header = struct.pack(">IIBBBBB", rows.shape[1], rows.shape[0], 16, 2, 0, 0, 0)
    file.write_bytes(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header)
                     + chunk(b"IDAT", zlib.compress(raw)) + chunk(b"IEND", b""))


def fits(bits=16, rows="TOP-DOWN", cell=""):
    """FITS Standard 4.0; without ROWORDER the first row is the lowest."""
    def write(file, planes):
        values = mosaic(planes, cell) if cell else planes[..., 1]
        values = values if rows == "TOP-DOWN" else values[::-1]
        cards = [("SIMPLE", "T"), ("BITPIX", bits), ("NAXIS", 2),
                 ("NAXIS1", values.shape[1]), ("NAXIS2", values.shape[0])]
        cards += [("BZERO", 32768), ("BSCALE", 1)] if bits == 16 else []
        cards += [("ROWORDER", f"'{rows}'")] if rows else []
        cards += [("BAYERPAT", f"'{cell}    '")] if cell else []
        text = "".join(f"{key:<8}= {value:>20}".ljust(80) for key, value in cards) + "END"
        data = (values - 32768).astype(">i2") if bits == 16 else values.astype(">f4")
        data = data.tobytes()
        text = text.ljust(-(-len(text) // 2880) * 2880)
        file.write_bytes(text.encode() + data + b"\0" * (-len(data) % 2880))
    return write


SIX_BY_SIX = "GBGGRGRGRBGBGBGGRGGRGGBGBGBRGRGRGGBG"
FORMATS = {
    "rgb.tif": plain_tiff(), "rggb.dng": dng(), "q95.jpg": jpeg(quality=95, subsampling=0),
    "grey-be.tif": plain_tiff(">", grey=True), "grbg.dng": dng("GRBG"), "16.png": png16,
    "deflate.tif": plain_tiff(deflate=True), "gbrg-be.dng": dng("GBRG", ">"), "8.png": png8,
    "float.tif": plain_tiff(kind="f4"), "bggr-border.dng": dng("BGGR", border=(8, 16)),
    "q90-420.jpg": jpeg(quality=90, subsampling=2), "planar.tif": planar_tiff,
    "table.dng": dng(table=True), "q80.jpg": jpeg(quality=80, subsampling=0),
    "top.fits": fits(), "six.dng": dng(SIX_BY_SIX), "bottom.fits": fits(rows="BOTTOM-UP"),
    "demosaiced.dng": dng(demosaiced=True), "unordered-float.fits": fits(-32, ""),
    "q98.jpg": jpeg(quality=98, subsampling=0), "mosaic.fits": fits(cell="RGGB"),
    "second.tif": plain_tiff(), "progressive.jpg": jpeg(quality=95, progressive=True)}


def has_exif(name):
    return not name.endswith("fits")


def displayed(angle_deg, orientation):
    """A direction after the turn that EXIF asks for (Exif 3.0, 0x0112)."""
    if orientation in (2, 4):
        return 180 - angle_deg
    if orientation in (5, 7):
        return 90 - angle_deg
    return angle_deg + (90 if orientation in (6, 8) else 0)


def describe(file, case, orientation):
    minutes, seconds = divmod(int(case["start"]), 60)
    subprocess.run(
        ["exiftool", "-q", "-m", "-overwrite_original", "-Make=Petrel", "-Model=P2",
         f"-DateTimeOriginal=2026:03:14 23:{minutes:02d}:{seconds:02d}",
         f"-ExposureTime={case['seconds']}", "-FNumber=2.8", "-ISO=3200", "-FocalLength=24",
         "-FocalPlaneXResolution=1666.667", "-FocalPlaneYResolution=1666.667",
         "-FocalPlaneResolutionUnit=cm", f"-Orientation#={orientation}", str(file)], check=True)
