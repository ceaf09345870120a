"""What stands in which column of the arrays of the search."""

PLACE, START, END, WORK, MOST_COWS, MEAL, MEAL_EARLIEST, MEAL_LATEST, FED_LEAVE, CLASS = range(10)
"""Of a shift: base, hours, longest time away, most cows, the meal's length (-1: none) and hours, the first leaving
time that needs no meal on the way, and a number that shifts alike in everything share."""
SHIFT_COLUMNS = 10
FIXED, PER_TICK, PER_METRE = range(3)
"""Of a shift's costs: for being used, per decisecond, per metre."""
SHIFT_MONEY = 3
WHERE, LENGTH, COWS, LEVEL = range(4)
"""Of a job: place, deciseconds, cows, hygiene."""
JOB_COLUMNS = 4
SIZE, LOAD, ROAD, BUSY, STAMP, LABELLED, TOUCHED = range(7)
"""Of a shift in the search: jobs in it, their cows, metres, deciseconds of drives and jobs, the number of its present
order, the number for which its labels were made, whether this step changed it."""
NOW_COLUMNS = 7
