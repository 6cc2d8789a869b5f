%
O1 (the top of an arc leaves the travel, its ends do not)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
X-3. Y104.
G2 X-1. I1. J0. F500. 
X1. I1.0001 J0.
G0 X0. Y104.5
G2 X2. I1. J0. ; expect outside-travel error: Y reaches 110.5 mm on the machine && Y 105.5 mm in the program, shifted by 5 mm (offset); travel from machine.travel.Y
G0 Z1.
M5
M30
%
