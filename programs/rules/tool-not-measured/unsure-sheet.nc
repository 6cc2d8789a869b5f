%
O1 (the sheet names no code that measures)
G21 G90 G17 G94
G54
M71
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; not checked tool-not-measured: machine.codes.measure_tool is not on the sheet
G0 Z1.
M5
M30
%
