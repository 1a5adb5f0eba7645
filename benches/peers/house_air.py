"""Three whole days of an empty and a full house by scipy, for the table tests/whole/tables/house_air.csv.

Python 3.11 or later; pip install numpy scipy. Run: python house_air.py > ../../tests/whole/tables/house_air.csv

The same two bodies (air; litter and slab) under weather held within each hour, but nothing else shared with the program: an
adaptive stiff solver (Radau, 1e-9) follows the differential equations, with bird heat, the natural flow and the film of the
roof taken at every instant, not held over the hour. The opening is fixed, the air bone dry outside; litter is so
much that its moisture (12 of 112) holds through the day. One day empty, one with 800 birds of 1.2 kg, one with 400 of 2.0 kg, with 6 kW that never reach the target.
"""

import numpy as np
import scipy
from scipy.integrate import solve_ivp

UA, ROOF, ALPHA, MASS, COUPLING = 179.8 + 283.2 + 57.96, 254.4, 0.7, 15e6, 720.0
GROUND, GROUND_C, VOLUME, LEAK, AIR = 48.0, 20.0, 15 * 8 * 2.8, 0.5, 1200.0
PRESSURE, HEIGHT, EFFECT, OPENING = 90000.0, 0.8, 0.5, 0.6
CASES = [("empty", 0.0, 1.2, 0.0), ("birds", 800.0, 1.2, 0.0), ("heated", 400.0, 2.0, 6000.0)]


def weather(hour):
    """Outside °C, wind m/s, sun W/m2 of an hour of the day."""
    middle = hour + 0.5
    outside = round(20 - 7 * np.cos(2 * np.pi * (middle - 3) / 24), 3)
    wind = round(1.0 + 0.8 * max(0.0, np.sin(np.pi * (middle - 6) / 12)), 3)
    sun = round(900 * max(0.0, np.sin(np.pi * (middle - 6) / 12)), 2)
    return outside, wind, sun


def slope(_, state, hour, birds, kg, heater):
    air, mass, water = state
    outside, wind, sun = weather(hour)
    volume = 287.042 * (outside + 273.15) / PRESSURE
    stack = 0.65 * np.sqrt(2 * 9.80665 * HEIGHT * abs(air - outside) / (max(air, outside) + 273.15))
    flow = (VOLUME * LEAK / 3600 + OPENING * np.hypot(EFFECT * wind, stack)) / volume
    at_20 = birds * 10.62 * kg**0.75
    sensible = max(0.0, at_20 * (0.67 * (1 + 0.02 * (20 - air)) - 9.8e-11 * air**6))
    latent = at_20 * (1 + 0.02 * (20 - air)) - sensible
    over_litter = 0.4 * 15 * 8 * (4 + 3.8 * flow * volume / (15 * 2.8)) / 1006
    kelvin = mass + 273.15
    saturated = np.exp(-5800.2206 / kelvin + 1.3914993 - 0.048640239 * kelvin + 4.1764768e-5 * kelvin**2
                       - 1.4452093e-8 * kelvin**3 + 6.5459673 * np.log(kelvin))
    activity = 0.45 + 0.25 * (12 / 112 - 0.10) / 0.05
    evaporation = over_litter * (activity * 0.621945 * saturated / (PRESSURE - saturated) - water)
    held = VOLUME * 101325 * (1 - 2.25577e-5 * 1000) ** 5.2559 / (287.042 * 293.15)
    sunny = ROOF * ALPHA * sun / (5.7 + 3.8 * wind)
    into_air = sensible + heater + sunny + (UA + ROOF + flow * 1006) * (outside - air) + COUPLING * (mass - air)
    into_mass = COUPLING * (air - mass) + GROUND * (GROUND_C - mass)
    into_mass -= evaporation * (2501000 - 2361 * mass)
    into_water = latent / 0.680 / 3.6e6 + evaporation - flow * water
    return [into_air / (VOLUME * AIR), into_mass / MASS, into_water / held]


print(f"# Air and litter of a house through three days. Made with scipy {scipy.__version__}, solve_ivp, Radau, rtol 1e-9: benches/peers/house_air.py says which house.")
print("# Means of each hour. Suggested tolerance: 0.1 K, 1 % of the humidity ratio.")
print("case,hour,outside_c,wind_m_s,sun_w_per_m2,air_c,mass_c,humidity_ratio_kg_per_kg")
for name, birds, kg, heater in CASES:
    state = [weather(0)[0]] * 2 + [0.0]
    for hour in range(24):
        args = (hour, birds, kg, heater)
        solved = solve_ivp(slope, (0, 3600), state, "Radau", dense_output=True, rtol=1e-9, atol=1e-9, args=args)
        means = solved.sol(np.linspace(0, 3600, 3601)).T
        means = scipy.integrate.simpson(means[:3601], dx=1.0, axis=0) / 3600
        state = solved.y[:, -1]
        print(name, hour, *weather(hour), f"{means[0]:.6f}", f"{means[1]:.6f}", f"{means[2]:.8f}", sep=",")
