%
O1 (measured behind an M0, warmed up again afterwards)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M0
M72
M3 M71
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect tool-measured-cold error @1: measured at line 10 && the warm-up had expired at line 9
G0 Z1.
M5
M30
%
