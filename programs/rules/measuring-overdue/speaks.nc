%
O1 (2700 s of dwell and 4 ms down to the cut, whatever the way back takes)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G4 P2700.
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect measuring-overdue warning @1: fine cut at least 2700.004 s after tool 3 was measured at line 9, 2700 s allowed && measuring tool 3 again before this line
G0 Z1.
M5
M30
%
