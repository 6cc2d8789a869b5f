%
O1 (a missing warm-up hides it)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect warm-up-missing error @1: counted from line 7 on, with no longer stop between
G0 Z1.
M5
M30
%
