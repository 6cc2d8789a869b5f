%
O1 (a millisecond more)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
M5
G4 P60.001
S20000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect spindle-idle warning @1: stood from line 10 on for 60.001 s, between measuring at line 9 and this fine cut; 60 s allowed && measuring tool 3 again before this line, spindle warm
G0 Z1.
M5
M30
%
