%
O1 (measured, taken out and put in again)
G21 G90 G17 G94
G54
M71
T3 M6
G43 H3
S20000 M3
M72
T5 M6
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect tool-not-measured warning @1: since line 11 && M72 between these lines, with the spindle warm && codes that measure: M72 (machine.codes.measure_tool)
G0 Z1.
M5
M30
%
