%
O1 (with the switch on the tool is not measured)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
/M72 ; expect warm-up-deletable warning @2: measuring that the fine cut at line 12 needs stands behind block delete && measuring in a block of its own, without / and M1
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect tool-not-measured warning @1: M72 between these lines, with the spindle warm && codes that measure: M72 (machine.codes.measure_tool)
G0 Z1.
M5
M30
%
