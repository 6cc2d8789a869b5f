%
O1 (a longer one does)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G4 P700.
M5
G4 P60.001
M3
G4 P718.4
G1 X3. F60. ; expect warm-up-missing error @1: ran 719.9 s && counted from line 13 on, with no longer stop between
G0 Z1.
M5
M30
%
