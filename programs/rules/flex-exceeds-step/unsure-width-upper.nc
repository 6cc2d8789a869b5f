%
O1 (the same on the upper level, an increment of feed too much)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Y-1.
Z-0.004
G1 X3. F20.
G0 Y-0.7
G1 X-3.
G0 Y-0.4
G1 X3.
G0 Y-0.1
G1 X-3.
G0 Y0.2
G1 X3.
G0 Y0.5
G1 X-3.
G0 Z1.
X0. Y0.5
Z-0.004
G1 Y0.58 F20.
X0.0002 Y0.5803 F47.7
X0.0005 Y0.5807
X0.0009 Y0.581
G0 Z1.
X-3. Y0.8
Z-0.004
G1 X3. F20.
G0 Z1.
X-3. Y0.
Z-0.008
G1 X3. F20. ; not checked flex-exceeds-step: the width of cut is not known, and the force of a full slot would be too much
G0 Z1.
M5
M30
%
