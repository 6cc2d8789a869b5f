%
O1 (2691.9 s, and 8 s at most for the way back from an unknown place)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G4 P2691.9
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60.
G0 Z1.
M5
M30
%
