%
O1 (measured a tenth of a second too early; warm ahead of the cut)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
G4 P718.4
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; expect tool-measured-cold error @1: tool 3 makes a fine cut and was measured at line 9 with no valid warm-up behind it && no warm-up stands before line 9
G0 Z1.
M5
M30
%
