%
O1 (an operation that cuts nothing at all)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z1.
G1 X4. F100. ; expect cuts-air note: 100 % of the path at feed removes nothing && 8 mm of 8 mm of the operation; limits.air_share; the longest move in air is line 9 with 8 mm
S20000
G0 Z0.
G1 Z-0.02 F30.
X3. F100.
G0 Z1.
M5
M30
%
