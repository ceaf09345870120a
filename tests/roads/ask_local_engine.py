"""Run by a Python that the engine's library fits: asks our adapter and prints what it says, as JSON.

`python ask_local_engine.py EXTRACT`, points as [[latitude, longitude], ...] on standard input.
"""

import json
import sys

from visits.roads.local_engine import local_engine

engine = local_engine(sys.argv[1])
points = [tuple(point) for point in json.load(sys.stdin)]
table = engine.table(points, points, 5)
rows = [[leg and (leg.seconds, leg.metres) for leg in row] for row in table]
json.dump({"source": engine.source, "key": engine.key, "rows": rows}, sys.stdout)
