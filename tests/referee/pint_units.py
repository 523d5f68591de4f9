"""Writes pint_units.csv: conversions by pint 0.25.3, an independent table of units.

Run in this folder: python3 pint_units.py > pint_units.csv
"""

import pint

units = pint.UnitRegistry()
ask = [
    ("square_feet_to_square_metres", "ft**2", "m**2"),
    ("square_metres_to_square_feet", "m**2", "ft**2"),
    ("gallons_to_litres", "gallon", "liter"),
    ("litres_to_gallons", "liter", "gallon"),
    ("pounds_to_kilograms", "pound", "kilogram"),
    ("kilograms_to_pounds", "kilogram", "pound"),
    ("spread_to_metric", "ft**2/gallon", "m**2/liter"),
    ("spread_to_customary", "m**2/liter", "ft**2/gallon"),
    ("fahrenheit_to_celsius", "degF", "degC"),
]
values = [0.125, 1.0, 3.5, 34.5, 55.0, 400.0, 1604.25]

print(f"# pint {pint.__version__}; conversion,value,result")
for name, given, wanted in ask:
    for value in values:
        found = units.Quantity(value, given).to(wanted).magnitude
        print(f"{name},{value!r},{found!r}")
