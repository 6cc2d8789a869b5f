%
O1 (the width of short moves at an angle is not known; in a full slot the tool would bend too much)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F20. ; not checked flex-exceeds-step: the width of cut is not known, and the force of a full slot would be too much
G0 Z1.
X0. Y0.
Z-0.004
G1 Y0.1 F20.
X0.0002 Y0.1003 F47.7
X0.0005 Y0.1007
X0.0009 Y0.101
G0 Z1.
M5
M30
%
