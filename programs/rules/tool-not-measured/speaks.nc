%
O1 (not measured since line 6 put it in the spindle)
G21 G90 G17 G94
G54
M71
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect tool-not-measured warning @1: tool 3 makes a fine cut and was not measured since line 6 put it in the spindle && M72 between these lines, with the spindle warm && codes that measure: M72 (machine.codes.measure_tool)
G0 Z1.
M5
M30
%
