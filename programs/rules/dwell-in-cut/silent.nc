%
O1 (dwells before and behind the cut)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G4 P0.5
G1 X3. F100.
G0 Z1.
G4 P0.5
G0 Z1.
M5
M30
%
