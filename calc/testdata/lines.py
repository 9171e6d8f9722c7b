#!/usr/bin/python3
"""Works the lines of cmd/boothset/command/testdata/lines.toml apart from the program: hoses
with a fluids library (python3-fluids, MIT), restrictions and guns with scipy as plan.py has
them. It prints lines.csv, which lines_test.go beside the lines reads.

What a part passes comes from the catalogue's files, where the program has it from; how the
parts make a line is worked here. Pressures are absolute, Pa, unless a name says psi.
"""
import csv
import math
import os
import re
import sys
import tomllib
from fractions import Fraction

from fluids.atmosphere import ATMOSPHERE_1976
from fluids.compressible import isothermal_gas
from fluids.friction import Churchill_1977
from scipy.optimize import brentq

sys.dont_write_bytecode = True  # leaves nothing beside the sources
from plan import PSI, R, SCFM, SEA, Air, Gun, flow, inlet, outlet

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.join(HERE, "..", "..")
ROUGH, RHO_ANR = 1.5e-6, 1.185
METRES = {"ft": 0.3048, "in": 0.0254, "m": 1.0, "mm": 1e-3, "": None}


def load(*path):
    with open(os.path.join(ROOT, *path), "rb") as f:
        return tomllib.load(f)


def number(text):
    """A number with its unit: 3/8in, 25ft, 1-1/4in."""
    n, unit = re.fullmatch(r"([-\d./ ]+?) *([A-Za-z]*)", text.strip()).groups()
    return float(Fraction(n)) if "/" in n else float(n), unit


def metres(text):
    n, unit = number(text)
    return n * METRES[unit]


def kelvin(text):
    n, unit = number(text)
    return (n - 32) / 1.8 + 273.15 if unit == "F" else n + 273.15


def psi(text):
    n, unit = number(text)
    return n * 1e5 / PSI if unit == "bar" else n


def conductance(e):
    c = e.get("conductance")
    return (0.125 * (metres(e["bore"]) * 1e3) ** 2 if c is None else c) * 1e-8


def laid(over, under):
    return {k: laid(over[k], under[k]) if isinstance(over.get(k), dict) and isinstance(under.get(k), dict) else over.get(k, under.get(k))
            for k in {**under, **over}}


class Hose:
    """A tube with a fitting at either end, in the proportion of the catalogue's nearest bore."""

    def __init__(self, text, hoses):
        length, bore = text.rsplit(",", 1)
        self.length, self.bore = metres(length), metres(bore)
        near = min(hoses.values(), key=lambda h: abs(self.bore / metres(h["bore"]) - 1))
        end = self.bore * metres(near["end"]) / metres(near["bore"])
        self.end = 0.125 * (end * 1e3) ** 2 * 1e-8

    def inlet(self, q, p2, air):
        p2 = inlet(self.end, 0.5, q, p2, air)
        m = q * RHO_ANR
        re_ = 4 * m / (math.pi * self.bore * ATMOSPHERE_1976.viscosity(air.kelvin))
        fd = Churchill_1977(re_, ROUGH / self.bore)
        area = math.pi / 4 * self.bore**2
        p2 = max(p2, m / area * math.sqrt(R * air.kelvin))  # no faster than the isothermal limit

        def off(p1):
            return isothermal_gas(rho=p1 / (R * air.kelvin), fd=fd, P1=p1, P2=p2, L=self.length, D=self.bore) - m

        high = p2 * 1.001
        while off(high) < 0:
            high *= 1.3
        return inlet(self.end, 0.5, q, brentq(off, p2 * (1 + 1e-12), high, xtol=1e-9, rtol=1e-14), air)


class Squeeze:
    def __init__(self, c, b):
        self.c, self.b = c, b

    def inlet(self, q, p2, air):
        return inlet(self.c, self.b, q, p2, air)


def march(parts, q, p, air):
    for part in reversed(parts):
        p = part[1].inlet(q, p, air)
    return p


def held(parts, q, supply, air):
    """What stands downstream of parts with supply before them."""
    return brentq(lambda p: march(parts, q, p, air) - supply, air.ambient * 0.5, supply, xtol=1e-6, rtol=1e-14)


def of_class(guns, name):
    """A gun with what its class says where it is left out: the cap at the class's limit or in
    proportion to the inlet, the valve so that it takes the same share of the pressure."""
    g = guns[name]
    if g.get("class", name) == name:
        return g
    c = guns[g["class"]]
    full = {**{k: c[k] for k in ("inlet", "flow", "valve") if k in c}, **g}
    if "cap" not in g:
        ratio = psi(full["inlet"][:-3]) / psi(c["inlet"][:-3])
        full["cap"] = c.get("cap-limit") or f"{psi(c['cap'][:-3]) * ratio}psi"
    if "valve" not in g:
        absolute = lambda gun: psi(gun["inlet"][:-3]) * PSI + SEA
        share = number(full["flow"][:-3])[0] / number(c["flow"][:-3])[0] * absolute(c) / absolute(full)
        full["valve"] = {**c["valve"], "conductance": c["valve"]["conductance"] * share}
    return full


def work_bare(line, flags, shelf, g, gun, parts, air, gauge, absolute, put):
    """A gun that the wall alone sets: the mark nearest to what is wanted, and what it gets."""
    wanted = absolute(psi(shelf["coat"][flags["coat"]]["working"][g["class"]]["start"][:-3]))
    after = parts[[p[0] for p in parts].index("regulator") + 1:]
    q, _ = gun.air(wanted, air)
    wall = round(gauge(march(after, q, wanted, air)))
    q = brentq(lambda q: march(after, q, gun.working(q, air), air) - absolute(wall), 1e-6, 2 * q, xtol=1e-14, rtol=1e-14)
    put("wall", wall)
    put("gun", gauge(gun.working(q, air)))
    put("cfm", q / SCFM)


def at_height(h):
    """The standard atmosphere at a geopotential height, which the library gives by the geometric."""
    earth = 6356766.0
    return ATMOSPHERE_1976(earth * h / (earth - h)).P


def work(line, job, shelf, put):
    flags = {**job, **line.get("flags", {})}
    ambient = at_height(metres(flags["altitude"])) if "altitude" in flags else SEA
    air = Air(ambient, kelvin(flags.get("hose-temp", flags["temp"])))
    gauge = lambda p: (p - ambient) / PSI
    absolute = lambda g: g * PSI + ambient

    parts = []
    for text in line["parts"]:
        kind, entry = text.split("=", 1)
        if kind == "hose":
            parts.append((kind, Hose(entry, shelf["hose"]), {}))
        else:
            e = shelf[kind][entry]
            parts.append((kind, Squeeze(conductance(e), e["ratio"]), e))
    g = of_class(shelf["gun"], flags["gun"])
    gun = Gun(psi(g["inlet"][:-3]), number(g["flow"][:-3])[0], psi(g["cap"][:-3]))
    valve = shape = None
    if not g.get("no-valve"):
        valve, shape = Squeeze(g["valve"]["conductance"] * 1e-8, g["valve"]["ratio"]), g["valve"]["shape"]
    elif parts[-1][0] == "valve":  # it is the gun's
        _, valve, e = parts.pop()
        shape = e["shape"]

    if valve is None:
        work_bare(line, flags, shelf, g, gun, parts, air, gauge, absolute, put)
        return
    target = absolute(sum(line["between"]["gun"]) / 2 if "gun" in line["between"] else psi(shelf["coat"][flags["coat"]]["working"][g.get("class", flags["gun"])]["start"][:-3]))
    q, _ = gun.air(target, air)
    supply = absolute(psi(flags["supply"][:-3]) if flags["supply"].endswith("psi") else psi(flags["supply"]))
    regulators = [i for i, p in enumerate(parts) if p[0] == "regulator"]
    wall, sets = (regulators[0], regulators[-1]) if regulators else (-1, -1)
    into = valve.inlet(q, target, air)
    set_open = march(parts[sets + 1:], q, into, air)
    needed = march(parts[:sets + 1], q, set_open, air)
    if needed > supply:
        put("needed", gauge(needed))

        def asked(q):
            w = gun.working(q, air)
            return march(parts, q, valve.inlet(q, w, air), air) - supply

        best = brentq(asked, 1e-6, q, xtol=1e-14, rtol=1e-14)
        put("best", gauge(gun.working(best, air)))
        return
    put("cfm", q / SCFM)

    mark = 0.05e5 / PSI if flags.get("units") == "metric" else 1.0

    def marked(at, opened):
        most = held(parts[:at + 1], q, supply, air)
        reserve = 1.0
        next_ = math.ceil((gauge(opened) + reserve) / mark - 1e-9) * mark
        sagged = held(parts[:at + 1], q, absolute(gauge(supply) * 0.95), air)
        if sagged < absolute(next_):
            reserve = max(reserve, (most - sagged) / PSI)
            next_ = math.ceil((gauge(opened) + reserve) / mark - 1e-9) * mark
        return min(next_, gauge(most))

    if len(regulators) == 2:
        put("foot", gauge(set_open))
        set_, into_ = set_open, into
        opened = march(parts[wall + 1:sets + 1], q, set_open, air)
        wall_set = marked(wall, opened)
    elif regulators:
        opened = set_open
        wall_set = marked(sets, opened)
        set_ = absolute(wall_set)
    else:
        opened, wall_set, set_ = set_open, gauge(supply), supply
    put("open", gauge(opened))
    put("wall", wall_set)
    if regulators:
        e = parts[wall][2]
        rise = number(e.get("lock-up", "0psi")[:-3])[0] + number(e["droop"][:-3])[0] / number(e["rated-flow"][:-3])[0] * q / SCFM
        put("static", min(wall_set + math.floor(rise / mark + 0.5) * mark, max(gauge(supply), wall_set)))
    # What stands before the valve at the pressure set, and how far the valve is open for it.
    before = held(parts[sets + 1:], q, set_, air)
    if len(regulators) < 2:
        c = q / flow(1, valve.b, before, target, air)
        put("opening", 100 * (c / valve.c) ** (1 / shape))
    # Each part's loss, with the regulators holding what they are set to.
    p, couplings = supply, 0.0
    for i, part in enumerate(parts):
        if part[0] == "regulator":
            p = absolute(wall_set) if i == wall and len(regulators) == 2 else set_
            continue
        out = held(parts[i:i + 1], q, p, air)
        put(f"part {i}", (p - out) / PSI)
        couplings += (p - out) / PSI if part[0] == "coupling" else 0
        p = out
    put("couplings", couplings)


def main():
    lines = load("cmd", "boothset", "command", "testdata", "lines.toml")
    shelf = {}
    for name in ("coats", "guns", "line"):
        shelf.update(load("presets", "catalogue", name + ".toml"))
    shelf = laid(tomllib.loads(lines["shop"]), shelf)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["line", "figure", "value"])
    for line in lines["line"]:
        work(line, lines["job"], shelf, lambda figure, value, n=line["name"]: out.writerow([n, figure, f"{value:.7g}"]))


main()
