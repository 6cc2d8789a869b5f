%
O1 (slower running between does not count and does no harm)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G4 P358.5
S19999
G4 P600.
S20000
G4 P358.5
G1 X3. F60.
G0 Z1.
M5
M30
%
