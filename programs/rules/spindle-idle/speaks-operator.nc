%
O1 (M0 counts as longer; warmed up again, not measured again)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
M0
M3 M71
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect spindle-idle warning @1: stood from line 10 on for as long as the operator takes && measuring tool 3 again before this line, spindle warm && M0 and M60 count as longer than any limit
G0 Z1.
M5
M30
%
