%
O1 (passes that begin where others ended: most of each is in air)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X0. F100.
G0 Z0.
X-4.
G1 Z-0.02 F30. ; expect cuts-air note: % of the path at feed removes nothing, allowed 50 % && of 13.56 mm of the operation; limits.air_share; the longest move in air is line 13 with 0.02 mm
X0.5 F100.
G0 Z0.
X-4.
G1 Z-0.02 F30.
X1. F100.
G0 Z1.
M5
M30
%
