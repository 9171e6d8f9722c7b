"""Times the hose's arithmetic in the reference library: Churchill's friction factor and
the isothermal outlet pressure. Prints name and nanoseconds a call, the median of seven."""

import statistics
import time

from fluids.compressible import isothermal_gas
from fluids.friction import Churchill_1977

D, L, P1, T = 0.009525, 7.62, 308167.7, 293.15
RHO = P1 / (287.05 * T)
FD = Churchill_1977(42535.0, 1.5e-6 / D)


def median(call, n=2000):
    times = []
    for _ in range(7):
        start = time.perf_counter_ns()
        for _ in range(n):
            call()
        times.append((time.perf_counter_ns() - start) / n)
    return statistics.median(times)


print("FrictionFactor", median(lambda: Churchill_1977(42535.0, 1.5e-6 / D)))
print(
    "HoseDownstream",
    median(
        lambda: isothermal_gas(rho=RHO, fd=Churchill_1977(42535.0, 1.5e-6 / D), P1=P1, L=L, D=D, m=0.00577),
        500,
    ),
)
