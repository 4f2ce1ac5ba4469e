#!/usr/bin/python3
"""Runs the program over the nights of other_nights.py and says how often it is right.

    other_score.py DIR rondure.jar [--variants full,groups,lone,bare] [--out OUT] [--reuse] [NIGHT …]

DIR is what other_nights.py made. Every night is run alone; outputs go to OUT (DIR/out), the
figures to the terminal; --reuse takes outputs that are there as they are. Each frame is *right* when the cause it was given is an accepted one, *undecided*
when it said so (*honest* when an accepted cause is among the two it names), else *wrong*. Frames
not measured are counted apart. Classes: *clear*, one cause with at least 60 % of the excess (or
haze, or the lens at the edge); *mixed*, a cause with less; *sharp*, none. Where the widening is
within 5 % of the limit that names a cause (1.25; 1.60 at the edge) the frame is *near* it, and
counted in a class of its own. Numbers are compared for linear files where the cause has at least
60 % of the excess.
"""
import argparse
import collections
import json
import pathlib
import subprocess
import sys

CLASSES = ("clear", "mixed", "sharp", "near")
ANSWERS = ("right", "honest", "undecided", "wrong", "unmeasured")


def frame_class(true):
    if abs(true["widening"] / 1.25 - 1) < 0.05:
        return "near"
    if true["widening"] < 1.25 and abs(true["edgeWidening"] / 1.6 - 1) < 0.05:
        return "near"
    if true["cause"] == "none":
        return "sharp"
    return "clear" if true["largestShare"] >= 0.6 else "mixed"


def answer(found, true):
    if found["status"] != "measured":
        return "unmeasured"
    if found["cause"] in true["accepted"]:
        return "right"
    if found["cause"] == "undecided":
        return "honest" if set(found["undecidedBetween"]) & set(true["accepted"]) else "undecided"
    return "wrong"


def run(given, folder, out):
    if given.reuse and (out / "night.json").exists():
        return json.loads((out / "night.json").read_text())["frames"]
    done = subprocess.run(["java", "-jar", given.jar, "report", str(folder), "--out", str(out)],
                          capture_output=True, text=True)
    if done.returncode not in (0, 1):
        print(f"{folder}: exit {done.returncode}\n{done.stderr[-2000:]}")
        return []
    return json.loads((out / "night.json").read_text())["frames"]


def numbers(found, true):
    """Found over true of what dominates, when the program tells."""
    budget = found.get("budgetPx2")
    if not budget or not true["linear"] or frame_class(true) != "clear":
        return {}
    cause = true["cause"]
    if cause not in ("focus", "trailing", "tripod", "lens"):
        return {}
    ratio = max(budget[cause], 0) / true["sky"][cause] if true["sky"][cause] > 0.02 else 1
    return {cause: ratio**0.5, "core": (budget["core"] / true["core"]) ** 0.5}


def judged(given, variant):
    rows = []
    out = given.out or given.root / "out"
    for truth_file in sorted((given.root / "truth").glob("*.json")):
        if given.nights and truth_file.stem not in given.nights:
            continue
        truth = json.loads(truth_file.read_text())
        (out / variant).mkdir(parents=True, exist_ok=True)
        frames = run(given, given.root / variant / truth_file.stem,
                     out / variant / truth_file.stem)
        for found in sorted(frames, key=lambda f: pathlib.Path(f["file"]).name):
            true = truth[pathlib.Path(found["file"]).name]
            rows.append((truth_file.stem, found, true, answer(found, true)))
    return rows


def tell_nights(rows):
    print("\n| night | right | honest | undecided | wrong | unmeasured | causes found (true) |")
    for night in dict.fromkeys(row[0] for row in rows):
        own = [row for row in rows if row[0] == night]
        count = collections.Counter(row[3] for row in own)
        said = " ".join(
            (found["cause"] or found["status"]) + ("" if how == "right" else f"({true['cause']})")
            for _, found, true, how in own)
        print(f"| {night} | " + " | ".join(str(count[a]) for a in ANSWERS) + f" | {said} |")


def tell_classes(rows):
    print("\n| class | frames | right | right or honestly undecided | wrong |")
    for kind in CLASSES:
        own = [row for row in rows if frame_class(row[2]) == kind and row[3] != "unmeasured"]
        if own:
            count = collections.Counter(row[3] for row in own)
            n = len(own)
            print(f"| {kind} | {n} | {count['right'] / n:.1%} | "
                  f"{(count['right'] + count['honest']) / n:.1%} | {count['wrong'] / n:.1%} |")


def tell_confusion(rows):
    table = collections.Counter(
        (true["cause"], found["cause"] or found["status"]) for _, found, true, _ in rows)
    columns = sorted({key[1] for key in table})
    print("\n| true \\ found | " + " | ".join(columns) + " |")
    for true in sorted({key[0] for key in table}):
        print(f"| {true} | " + " | ".join(str(table[true, column]) for column in columns) + " |")


def tell_wrong(rows):
    print("\nWrong, the most confident first:")
    wrong = [row for row in rows if row[3] == "wrong"]
    for _, found, true, _ in sorted(wrong, key=lambda row: -(row[1]["confidence"] or 0)):
        shares = " ".join(f"{cause} {value:.2f}" for cause, value in true["sky"].items() if value)
        print(f"{found['file']}: {found['cause']} {found['confidence']:.2f}, true {true['cause']} "
              f"widening {true['widening']:.2f} edge {true['edgeWidening']:.2f} "
              f"light {true['transparency']:.2f} core {true['core']:.2f} {shares}; "
              f"budget {found['budgetPx2']}")


def tell_confidence(rows):
    bins = collections.defaultdict(list)
    for _, found, true, how in rows:
        if how in ("right", "wrong") and frame_class(true) != "near":
            bins[min(9, int(found["confidence"] * 10))].append(how == "right")
    print("\n| said | frames | right |")
    for key, hits in sorted(bins.items()):
        print(f"| {key * 10}–{key * 10 + 10} % | {len(hits)} | {sum(hits) / len(hits):.0%} |")


def tell_numbers(rows):
    ratios = collections.defaultdict(list)
    for night, found, true, _ in rows:
        if found["status"] == "measured":
            for key, ratio in numbers(found, true).items():
                ratios[key].append((ratio, found["file"]))
    print("\n| length, found over true | frames | median | least | most |")
    for key, values in sorted(ratios.items()):
        values.sort()
        print(f"| {key} | {len(values)} | {values[len(values) // 2][0]:.3f} | "
              f"{values[0][0]:.3f} {values[0][1]} | {values[-1][0]:.3f} {values[-1][1]} |")


def main():
    options = argparse.ArgumentParser()
    options.add_argument("root", type=pathlib.Path)
    options.add_argument("jar")
    options.add_argument("--variants", default="full,groups,lone,bare")
    options.add_argument("--out", type=pathlib.Path)
    options.add_argument("--reuse", action="store_true")
    options.add_argument("nights", nargs="*")
    given = options.parse_intermixed_args()
    for variant in given.variants.split(","):
        rows = judged(given, variant)
        print(f"\n## {variant}: {len(rows)} frames")
        for tell in (tell_nights, tell_classes, tell_confusion, tell_confidence, tell_numbers,
                     tell_wrong):
            tell(rows)
        sys.stdout.flush()


if __name__ == "__main__":
    main()
