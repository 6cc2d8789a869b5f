%
O1 (a slot, and back at feed above its floor; up a last digit too far)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X0. F100.
Z-0.01 ; expect cuts-air note: 50 % of the path at feed removes nothing, allowed 50 % && 4.02 mm of 8.04 mm of the operation; limits.air_share; the longest move in air is line 12 with 4 mm
X-4.
Z0.0001
G0 Z1.
M5
M30
%
