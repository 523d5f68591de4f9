"""Writes pipe_tubes.csv: outside and wall of pipe by fluids 1.3.1 (MIT) and by the table in bd_warehouse 0.4.0 (Apache-2.0).

Get both, then run in this folder:
    python3 -m pip install fluids==1.3.1
    python3 -m pip download --no-deps bd_warehouse==0.4.0
    python3 pipe_tubes.py bd_warehouse-0.4.0-py3-none-any.whl > pipe_tubes.csv
The wheel is only read, not installed: importing it needs a CAD kernel, its table does not.
"""

import csv
import io
import sys
import zipfile

import fluids
from fluids.piping import nearest_pipe

SIZES = ["1/4", "3/8", "1/2", "5/8", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "4"]
NUMBERS = [0.25, 0.375, 0.5, 0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0]
TABLE = {
    ("copper", "K"): ["copper-k"],
    ("copper", "L"): ["copper-l"],
    ("copper", "M"): ["copper-m"],
    ("pvc", "40"): ["pvc-40", "pvc-drain"],
    ("abs", "40"): ["abs-drain"],
}
SCHEDULES = {"40": "steel", "40D1785": "pvc-40", "PVCD2665": "pvc-drain", "DR11D2241CTS": "cpvc"}

print(f"# fluids {fluids.__version__} and bd_warehouse 0.4.0; referee,pipe,size,outside in,wall in")
with zipfile.ZipFile(sys.argv[1]) as wheel:
    text = wheel.read("bd_warehouse/pipe.csv").decode()
for row in csv.DictReader(io.StringIO(text)):
    for pipe in TABLE.get((row["material"], row["identifier"]), []):
        if row["nps"] in SIZES:
            print(f"bd_warehouse,{pipe},{row['nps']},{row['od']},{row['thickness']}")
for schedule, pipe in SCHEDULES.items():
    for name, number in zip(SIZES, NUMBERS):
        try:
            size, _inside, outside, wall = nearest_pipe(NPS=number, schedule=schedule)
        except ValueError:
            continue
        # It goes to the nearest size that it has, where it has not this one.
        if size == number:
            print(f"fluids,{pipe},{name},{outside / 0.0254:.6f},{wall / 0.0254:.6f}")
