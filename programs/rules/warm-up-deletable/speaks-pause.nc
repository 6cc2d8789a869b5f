%
O1 (the spindle turns while the operator waits, if the switch for M1 is on)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
M1 ; expect warm-up-deletable warning @1: is the pause at M1 with the spindle turning && the warm-up in a block of its own, without / and M1
G1 X3. F60. ; expect warm-up-missing error @1: ran 1.5 s && counted from line 9 on, with no longer stop between | expect tool-not-measured warning @1: M72 between these lines, with the spindle warm && codes that measure: M72 (machine.codes.measure_tool)
G0 Z1.
M5
M30
%
