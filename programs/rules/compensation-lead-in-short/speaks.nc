%
O1 (a lead-in just shorter than the radius)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 G41 D3 X0.1999 F100. ; expect compensation-lead-in-short error: switched on over 0.1999 mm, the tool's radius is 0.2 mm && a straight move of 0.2 mm or more
X1.
G40 X2.
G0 Z1.
M5
M30
%
