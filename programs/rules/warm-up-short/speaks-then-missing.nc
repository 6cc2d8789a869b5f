%
O1 (a missing warm-up hides the short one)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G4 P700.
G1 X3. F60. ; expect warm-up-missing error @1: fine cut after a warm-up that is too short: the spindle ran 701.5 s && counted from line 9 on, with no longer stop between
G0 Z1.
M5
M30
%
