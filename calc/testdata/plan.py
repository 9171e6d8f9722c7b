#!/usr/bin/python3
"""Works a bench apart from the program, with scipy's root finders and quadrature, from the
formulas that the program's comments name. It prints plan.csv, which tests of calc read.

The bench is mildClear of solve_test.go, and highVolumeBase of inflight_test.go. Pressures
are absolute, Pa, unless a name says psi.
"""
import math
from scipy.integrate import quad
from scipy.optimize import brentq

PSI = 6894.757293168361
SCFM = 0.028316846592 / 60 * 101325 / 1e5  # m3/s ANR
R, SEA = 287.05, 101325.0


def root(f, low, high):
    return brentq(f, low, high, xtol=1e-12 * abs(high), rtol=1e-15)


class Air:
    def __init__(self, ambient, kelvin):
        self.ambient, self.kelvin = ambient, kelvin
        self.root = math.sqrt(293.15 / kelvin)
        self.mu = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)


# ISO 6358-1: flow through a part of conductance c and critical ratio b, and the inlet for it.
def flow(c, b, p1, p2, air):
    r = p2 / p1
    phi = 1 if r <= b else 0 if r >= 1 else math.sqrt(1 - ((r - b) / (1 - b)) ** 2)
    return c * p1 * air.root * phi


def inlet(c, b, q, p2, air):
    u = q / (c * air.root)
    if u * b >= p2:
        return u
    return root(lambda p1: flow(c, b, p1, p2, air) - q, max(u, p2), 2 * (u + p2))


def outlet(c, b, q, p1, air):
    u = q / (c * air.root) / p1
    return p1 * (b + (1 - b) * math.sqrt(1 - u * u))


# Isothermal flow in a hose, Churchill's factor.
def hose_inlet(hose, q, p2, air):
    length, bore, wall, end, b = hose
    p2 = inlet(end, b, q, p2, air)
    g = q * 1.185 / (math.pi / 4 * bore**2)
    re = g * bore / air.mu
    big = (2.457 * math.log(1 / ((7 / re) ** 0.9 + 0.27 * wall / bore))) ** 16
    f = 8 * ((8 / re) ** 12 + (big + (37530 / re) ** 16) ** -1.5) ** (1 / 12)
    k = g * g * R * air.kelvin
    p1 = root(lambda p: p * p - p2 * p2 - k * (f * length / bore + 2 * math.log(p / p2)), p2, 10 * p2)
    return inlet(end, b, q, p1, air)


# A gun by its stamp (psi, scfm, psi at the cap): passages of b = 0.3 and an ideal nozzle.
CRITICAL = (2 / 2.4) ** 3.5


class Gun:
    def __init__(self, psi, scfm, cap):
        air, q = Air(SEA, 293.15), scfm * SCFM
        p1, p2 = psi * PSI + SEA, cap * PSI + SEA
        self.passages = q / flow(1, 0.3, p1, p2, air)
        self.cap = q / flow(1, CRITICAL, p2, SEA, air)

    def air(self, working, air):
        off = lambda p: flow(self.passages, 0.3, working, p, air) - flow(self.cap, CRITICAL, p, air.ambient, air)
        cap = root(off, air.ambient * (1 + 1e-12), working)
        return flow(self.cap, CRITICAL, cap, air.ambient, air), cap

    def working(self, q, air):
        return inlet(self.passages, 0.3, q, inlet(self.cap, CRITICAL, q, air.ambient, air), air)


class Bench:
    shape = 2.25  # the power of the opening that the valve's conductance goes with
    valve, coupling, seat = (6.5e-8, 0.3), (8e-8, 0.4), (9e-8, 0.3)
    hose = (25 * 0.3048, 0.009525, 1.5e-6, 9e-8, 0.5)

    def __init__(self, psi, celsius):
        self.gun, self.air = Gun(32, 10, 20), Air(SEA, celsius + 273.15)
        self.target = psi * PSI + SEA
        self.q, self.cap = self.gun.air(self.target, self.air)

    def psi(self, p):
        return (p - SEA) / PSI

    def line(self, q, p):
        p = hose_inlet(self.hose, q, inlet(*self.coupling, q, p, self.air), self.air)
        return inlet(*self.coupling, q, p, self.air)

    def wall(self, q, working, opening=1):
        return self.line(q, inlet(self.valve[0] * opening**self.shape, self.valve[1], q, working, self.air))

    def gets(self, wall, opening):
        most = wall * min(self.gun.passages, self.gun.cap) * self.air.root
        q = root(lambda q: self.wall(q, self.gun.working(q, self.air), opening) - wall, 1e-9, most)
        return self.gun.working(q, self.air)

    def opening(self, wall):
        into = root(lambda p: self.line(self.q, p) - wall, 0.9 * self.target, wall)
        c = self.q / flow(1, self.valve[1], into, self.target, self.air)
        share = c / self.valve[0]
        choked = self.q / (c * into * self.air.root)
        mach = root(lambda m: m / (1 + m * m / 5) ** 3 - choked / 1.728, 0, 1)
        return share ** (1 / self.shape), mach

    def eighth_turn(self, wall, opening):  # of two turns in all
        h = 1e-4
        return (self.gets(wall, opening + h) - self.gets(wall, opening - h)) / (2 * h) / 16 / PSI

    def sag(self, wall, opening):  # by 5 % of the gauge
        h = 50
        slope = (self.gets(wall + h, opening) - self.gets(wall - h, opening)) / (2 * h)
        return slope * 0.05 * self.psi(wall)


# What a drop loses on its way: the jet, El-Shanawany and Lefebvre's drops, Antoine's vapour
# pressure, Fuller's diffusivity, Spalding's number, Ranz and Marshall, the free round jet.
SOLVENTS = {  # Antoine's constants for Pa and C, atoms
    "butyl-acetate": (9.1564, 1371.13, 204.273, 6, 12, 2),
    "water": (8.07131 + math.log10(133.322387415), 1730.63, 233.426, 0, 2, 1),
}


def thrust(q, cap, air):
    ratio = max(air.ambient / cap, CRITICAL)
    cooling = ratio ** (0.4 / 1.4)
    t, p = air.kelvin * cooling, ratio * cap
    v = math.sqrt(5 * (1 / cooling - 1) * 1.4 * R * t)
    mass = q * 1.185
    return mass * v + (p - air.ambient) * mass * R * t / (p * v)


ANCHOR_AIR = Air(SEA, 293.15)
ANCHOR = thrust(*Gun(32, 10, 20).air(26 * PSI + SEA, ANCHOR_AIR), ANCHOR_AIR)  # felt at 5.5 in


def saturation(k):  # over water, ASHRAE Fundamentals 2017, chapter 1, equation 6
    return math.exp(-5.8002206e3 / k + 1.3914993 - 4.8640239e-2 * k + 4.1764768e-5 * k * k
                    - 1.4452093e-8 * k**3 + 6.5459673 * math.log(k))


class Spray:
    def __init__(self, stamp, start, low, nearest, farthest, water):
        self.gun, self.start, self.low, self.water = Gun(*stamp), start, low, water
        self.band = nearest, farthest

    def lost(self, psi, celsius, humidity, nearer=0, slower=0):
        """The part lost, the drop's size and the distance in inches."""
        air = Air(SEA, celsius + 273.15)
        q, cap = self.gun.air(psi * PSI + SEA, air)
        push, mass = thrust(q, cap, air), q * 1.185
        u = push / mass
        cold = air.kelvin - u * u / (2 * R * 3.5)
        coating, liquid, volatile = (1030, 1000, 0.75) if self.water else (950, 880, 0.55)
        tip, mu, tension = 2.2e-3, 0.035, 0.027
        ratio, density = mass / (180e-6 / 60 * coating), SEA / (R * cold)
        d = tip * (1 + 1 / ratio) * (0.33 * (tension / (density * u * u * tip)) ** 0.6 * (coating / density) ** 0.1
                                     + 0.068 * math.sqrt(mu * mu / (coating * tension * tip)))
        inches = min(max(5.5 * math.sqrt(push / ANCHOR), self.band[0]), self.band[1])
        a, b, c, carbon, hydrogen, oxygen = SOLVENTS["water" if self.water else "butyl-acetate"]
        molar = (12.011 * carbon + 1.008 * hydrogen + 15.999 * oxygen) / 1e3
        volume = 15.9 * carbon + 2.31 * hydrogen + 6.11 * oxygen if carbon else 13.1
        diffusivity = 1.43e-7 * air.kelvin**1.75 / (SEA / 1e5 * math.sqrt(2 / (1 / (molar * 1e3) + 1 / 28.96))
                                                    * (volume ** (1 / 3) + 19.7 ** (1 / 3)) ** 2)
        gas = SEA / (R * air.kelvin)
        nu = air.mu / gas

        def mass_share(p):
            x = min(p / SEA, 0.99)
            return x * molar / (x * molar + (1 - x) * 0.02896)

        surface = mass_share(10 ** (a - b / (c + celsius - slower)))
        far = mass_share(humidity * saturation(air.kelvin) if self.water else 0)
        rate = 8 * gas * diffusivity / liquid * math.log(1 + (surface - far) / (1 - surface))
        core = 6 * tip

        def wait(x):  # s a metre, at half the jet's speed, with the wind's share
            v = 0.5 * u * min(1, core / x if x else 1)
            return (1 + 0.3 * math.sqrt(v * d / nu) * (nu / diffusivity) ** (1 / 3)) / v

        end = (inches - nearer) * 0.0254
        time = quad(wait, 0, core, epsrel=1e-12)[0] + quad(wait, core, end, epsrel=1e-12)[0]
        left = 1 - rate * time / d**2
        return (1 - left**1.5) / volatile, d, inches

    def day(self, name, celsius, humidity):
        before, drop, _ = self.lost(self.start, 21, 0.5)
        now, here, _ = self.lost(self.start, celsius, humidity)
        growth = self.lost(0.92 * self.start, 21, 0.5)[1] / drop - 1
        most = 0.08 * self.start * min(1, 0.04 / growth)
        share = min(max(math.log(now / before) / math.log(2.5), 0), 1)
        psi = self.start - 0.5 * math.floor(2 * most * share + 1e-9)
        lost, size, inches = self.lost(psi, celsius, humidity)
        cooler = min(1, humidity * saturation(celsius + 273.15) / saturation(celsius + 268.15))
        lever = lambda after: 1 - after[0] / lost
        ln = lambda c, h: math.log(self.lost(self.start, c, h)[0])
        for key, v in {
            "before": before, "now": now, "psi": psi, "drier": lost / before, "growth": size / here - 1, "inches": inches,
            "lever-pressure": lever(self.lost(psi - min(2, psi - self.low), celsius, humidity)),
            "lever-nearer": lever(self.lost(psi, celsius, humidity, nearer=min(1, inches - self.band[0]))),
            "lever-thinner": lever(self.lost(psi, celsius, humidity, slower=7)),
            "lever-cooler": lever(self.lost(psi, celsius - 5, cooler)),
            "per-kelvin": ln(celsius + 0.5, humidity) - ln(celsius - 0.5, humidity),
            "per-humidity": (ln(celsius, humidity + 0.01) - ln(celsius, humidity - 0.01)) / 0.02,
        }.items():
            put(name + "-" + key, v)


def put(name, value):
    print(f"{name},{value:.7g}")


def bench():
    b = Bench(26, (72 - 32) / 1.8)
    opened = b.wall(b.q, b.target)
    put("flow", b.q / SCFM)
    put("cap", b.psi(b.cap))
    put("open", b.psi(opened))
    wall = math.ceil(b.psi(opened) + 1)
    put("wall", wall)
    put("static", wall + 5 / 150 * b.q / SCFM)
    put("reserve", wall - b.psi(opened))
    for name, psi in (("wall", wall), ("now", 70)):
        x, mach = b.opening(psi * PSI + SEA)
        put(name + "-opening", x)
        put(name + "-mach", mach)
        put(name + "-eighth-turn", b.eighth_turn(psi * PSI + SEA, x))
        put(name + "-sag", b.sag(psi * PSI + SEA, x))
    put("now-open", b.psi(b.gets(70 * PSI + SEA, 1)))
    put("limit", b.psi(b.wall(b.gun.air(32 * PSI + SEA, b.air)[0], 32 * PSI + SEA)))
    put("floor", root(lambda x: b.eighth_turn(b.wall(b.q, b.target, x), x) - 1, 0.05, 0.95))
    put("floor-choked", b.q / (b.valve[0] * b.air.root) * b.valve[1] / b.target)

    supply = 28 * PSI + SEA
    seated = lambda q: inlet(*b.seat, q, b.wall(q, b.gun.working(q, b.air)), b.air)
    q = root(lambda q: seated(q) - supply, 1e-9, supply * min(b.gun.passages, b.gun.cap) * b.air.root)
    put("short-best", b.psi(b.gun.working(q, b.air)))
    put("short-wall", b.psi(b.wall(q, b.gun.working(q, b.air))))
    put("short-needed", b.psi(inlet(*b.seat, b.q, opened, b.air)))
    for psi in (35, 36, 36 * 0.95, 38, 38 * 0.95):
        put(f"seat-of-2.6-at-{psi:g}", b.psi(outlet(2.6e-8, 0.3, b.q, psi * PSI + SEA, b.air)))

    hot = Bench(26, 40)
    put("hot-flow", hot.q / SCFM)
    put("hot-open", hot.psi(hot.wall(hot.q, hot.target)))


if __name__ == "__main__":
    print("name,value")
    bench()
    Spray((32, 10, 20), 26, 23, 5, 7, False).day("solvent", 40, 0.12)
    water = Spray((29, 15, 10), 25, 19, 5, 8, True)
    water.day("water", 40, 0.12)
    # A class that may be held an inch nearer.
    near = Spray((32, 10, 20), 26, 23, 3, 7, False)
    put("an-inch-nearer", 1 - near.lost(24, 40, 0.12, nearer=1)[0] / near.lost(24, 40, 0.12)[0])
    # A hygrometer at its lowest reads no drier: the slope's lower end stays at 1 %.
    put("water-per-humidity-at-1", (math.log(water.lost(25, 40, 0.02)[0]) - math.log(water.lost(25, 40, 0.01)[0])) / 0.02)
    # At 10 psi 8 % less grows the drops by more than 4 %.
    soft = Spray((29, 15, 10), 10, 5, 5, 8, False)
    put("soft-most", 0.8 * 0.04 / (soft.lost(9.2, 21, 0.5)[1] / soft.lost(10, 21, 0.5)[1] - 1))
