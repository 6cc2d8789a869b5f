%
O1 (one revolution a minute too slow)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S19999 M3
G4 P3600.
G1 X3. F60. ; expect warm-up-missing error @1: fine cut after a warm-up that is too slow, 3601.5 s at 19999 rpm at most: the spindle ran 0 s at 20000 rpm or more, 720 s asked && counted from line 9 on, with no longer stop between
G0 Z1.
M5
M30
%
