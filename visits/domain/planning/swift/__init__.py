"""The search in machine code: the same costs as `board`, a thousand times a second as fast.

Modules named `machine_*` hold compiled functions and load numba; they are brought in only while planning
(`machine.py`), so that no web process carries the compiler.
"""
