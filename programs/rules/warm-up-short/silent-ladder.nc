%
O1 (a ladder of speeds that brings growth to within its share of the end)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S10000 M3
G4 P180.
S15000
G4 P120.
S20000
G4 P143.8
G1 X3. F60.
G0 Z1.
X-3.
Z-0.12
G1 X3. F60.
G0 Z1.
M5
M30
%
