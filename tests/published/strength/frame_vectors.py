"""Beam vectors from a general-purpose frame solver, PyNiteFEA 3.2.0 (PyPI), run once.

Writes frame_vectors.toml beside itself: single wood beams held at both ends or at one, and a rail
with a cap as two beams side by side, tied at 33 places so that they bend alike and slip freely.

    python3 -m venv venv && venv/bin/pip install PyNiteFEA==3.2.0
    venv/bin/python frame_vectors.py > frame_vectors.toml
"""

from Pynite import FEModel3D

PARTS = 32
LOAD = 200.0


def beam(b, d, e, span, case):
    """Sag and greatest moment of one rectangle."""
    i = b * d**3 / 12
    model = FEModel3D()
    model.add_material("wood", e, e / 2.4, 0.2, 0.0)
    model.add_section("s", b * d, b**3 * d / 12, i, 1.0)
    for n in range(PARTS + 1):
        model.add_node(f"N{n}", span * n / PARTS, 0, 0)
    for n in range(PARTS):
        model.add_member(f"M{n}", f"N{n}", f"N{n + 1}", "wood", "s")
    end = case == "EndPoint"
    model.def_support("N0", True, True, True, True, end, end)
    if not end:
        model.def_support(f"N{PARTS}", False, True, True, False, False, False)
    at = PARTS if end else PARTS // 2
    model.add_node_load(f"N{at}", "FY", -LOAD)
    model.analyze()
    sag = -model.nodes[f"N{at}"].DY["Combo 1"]
    moment = max(max(abs(m.max_moment("Mz")), abs(m.min_moment("Mz"))) for m in model.members.values())
    return sag, moment


def pair(pieces, e, span):
    """Sag and each piece's moment at midspan, two pieces tied so that they bend alike."""
    model = FEModel3D()
    model.add_material("wood", e, e / 2.4, 0.2, 0.0)
    model.add_material("tie", 1e11, 4e10, 0.3, 0.0)
    model.add_section("tie", 10.0, 1e-6, 1e-6, 1e-6)
    for k, (b, d) in enumerate(pieces):
        model.add_section(f"s{k}", b * d, b**3 * d / 12, b * d**3 / 12, 1.0)
        for n in range(PARTS + 1):
            model.add_node(f"N{k}.{n}", span * n / PARTS, 10.0 * k, 0)
        for n in range(PARTS):
            model.add_member(f"M{k}.{n}", f"N{k}.{n}", f"N{k}.{n + 1}", "wood", f"s{k}")
        model.def_support(f"N{k}.0", True, True, True, True, False, False)
        model.def_support(f"N{k}.{PARTS}", False, True, True, False, False, False)
    for n in range(1, PARTS):
        model.add_member(f"T{n}", f"N0.{n}", f"N1.{n}", "tie", "tie")
        model.def_releases(f"T{n}", Ryi=True, Rzi=True, Ryj=True, Rzj=True)
    model.add_node_load(f"N1.{PARTS // 2}", "FY", -LOAD)
    model.analyze(check_stability=False)
    sag = -model.nodes[f"N0.{PARTS // 2}"].DY["Combo 1"]
    moments = [abs(model.members[f"M{k}.{PARTS // 2}"].moment("Mz", 0.0)) for k in (0, 1)]
    return sag, moments


def main():
    print("# Made by frame_vectors.py with PyNiteFEA 3.2.0: inches, pounds, psi; 200 lb in all.")
    for b, d in ((1.5, 3.5), (3.5, 1.5), (5.5, 1.5), (1.5, 5.5), (3.5, 3.5), (5.5, 5.5)):
        for e in (1.26e6, 1.11150e6):
            for span in (36.0, 56.375, 68.5, 96.0):
                for case in ("MidPoint", "EndPoint"):
                    sag, moment = beam(b, d, e, span, case)
                    print(f'\n[[beam]]\ncase = "{case}"\nb = {b}\nd = {d}\ne = {e:.0f}\nspan = {span}')
                    print(f"sag = {sag:.9f}\nmoment = {moment:.6f}")
    for pieces in (((1.5, 3.5), (5.5, 1.5)), ((3.5, 1.5), (5.5, 1.5)), ((3.5, 1.5), (1.5, 5.5))):
        for span in (48.0, 68.5, 96.0):
            sag, (one, other) = pair(pieces, 1.4e6, span)
            (b0, d0), (b1, d1) = pieces
            print(f"\n[[pair]]\nfirst = [{b0}, {d0}]\nsecond = [{b1}, {d1}]\ne = 1400000\nspan = {span}")
            print(f"sag = {sag:.9f}\nmoments = [{one:.6f}, {other:.6f}]")


main()
