"""Vectors for the line from a general-purpose fluids library (python3-fluids, MIT).

Run with /usr/bin/python3; writes the files beside this script, or into the folder
given. Isothermal gas flow in a tube, Churchill's friction factor, IEC 60534 gas
sizing of a control valve. R, viscosity and reference atmosphere are stated here and
not taken from the code under test.
"""

import math
import os
import sys

from fluids.atmosphere import ATMOSPHERE_1976
from fluids.compressible import P_isothermal_critical_flow, isothermal_gas
from fluids.control_valve import size_control_valve_g
from fluids.friction import Churchill_1977

R = 287.05
PSI = 6894.757293168361
SEA = 101325.0
# One scfm at 14.696 psia and 68 F as m3/s at 100 kPa and 20 C; density there 1.185.
ANR_PER_SCFM = 0.028316846592 / 60 * 1.01325
RHO_ANR = 1.185
ROUGH = 1.5e-6

here = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(os.path.abspath(__file__))


def out(name):
    return open(os.path.join(here, name), "w", newline="\n")


def tube(bore_in, length_ft, scfm, psig, celsius):
    """The tube's outlet pressure by the library, or why there is none."""
    d, length, t = bore_in * 0.0254, length_ft * 0.3048, celsius + 273.15
    p1 = psig * PSI + SEA
    m = scfm * ANR_PER_SCFM * RHO_ANR
    re = 4 * m / (math.pi * d * ATMOSPHERE_1976.viscosity(t))
    fd = Churchill_1977(re, ROUGH / d)
    rho = p1 / (R * t)
    p_choke = P_isothermal_critical_flow(P=p1, fd=fd, D=d, L=length)
    most = isothermal_gas(rho=rho, fd=fd, P1=p1, P2=p_choke * (1 + 1e-9), L=length, D=d)
    if m >= most:
        return fd, None, m / most
    try:
        return fd, isothermal_gas(rho=rho, fd=fd, P1=p1, L=length, D=d, m=m), m / most
    except ValueError:  # the library's own limit, a hair below the one above
        return fd, None, m / most


with out("isothermal.csv") as f:
    f.write("bore_in,length_ft,scfm,psig,celsius,friction,p2_pa,share_of_choked\n")
    n = 0
    for bore in (0.25, 0.3125, 0.375, 0.5, 0.75):
        for length in (5, 12, 25, 50, 100):
            for scfm in (3, 8, 15, 25, 40):
                for psig in (20, 45, 90, 150):
                    celsius = (5, 20, 35)[n % 3]
                    n += 1
                    fd, p2, share = tube(bore, length, scfm, psig, celsius)
                    p2 = "choked" if p2 is None else repr(p2)
                    f.write(f"{bore},{length},{scfm},{psig},{celsius},{fd!r},{p2},{share!r}\n")
    # Close to choking, from either side.
    for bore, length, psig in ((0.25, 25, 30), (0.25, 5, 60), (0.3125, 50, 20), (0.375, 100, 20)):
        low, high = 0.1, 200.0
        for _ in range(80):
            mid = (low + high) / 2
            low, high = (low, mid) if tube(bore, length, mid, psig, 20)[1] is None else (mid, high)
        for k in (0.9, 0.98, 0.998, 1.002, 1.05):
            fd, p2, share = tube(bore, length, low * k, psig, 20)
            p2 = "choked" if p2 is None else repr(p2)
            f.write(f"{bore},{length},{low * k!r},{psig},20,{fd!r},{p2},{share!r}\n")

with out("churchill.csv") as f:
    f.write("re,relative,friction\n")
    for re in (200, 1000, 2300, 3000, 4000, 1e4, 3e4, 1e5, 3e5, 1e6):
        for rel in (0, 1e-5, 1e-4, 1e-3, 5e-3):
            f.write(f"{re},{rel},{Churchill_1977(re, rel)!r}\n")

with out("iec60534.csv") as f:
    # The flow coefficient Kv that IEC 60534-2-1 asks for, air, xT = 0.7; flow there is
    # at 0 C and 101325 Pa.
    f.write("scfm,psig1,psig2,kv\n")
    for scfm, a, b in ((15, 30, 28), (15, 90, 85), (25, 75, 67), (20, 100, 90), (20, 100, 70), (20, 100, 50), (20, 100, 10)):
        q = scfm * ANR_PER_SCFM * RHO_ANR * 273.15 * R / SEA
        kv = size_control_valve_g(T=293.15, MW=28.9647, mu=1.82e-5, gamma=1.4, Z=1.0, P1=a * PSI + SEA, P2=b * PSI + SEA, Q=q, xT=0.7)
        f.write(f"{scfm},{a},{b},{kv!r}\n")
