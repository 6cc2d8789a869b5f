%
O1 (between: the time to reach the part from where the tool was measured decides)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
M3
M72
S50000
G4 P15.7
G0 X-3. Y0. Z1.
Z-0.005
G1 X3. Z-0.015 F400. ; not checked speed-changed-since-measuring: a move begins or ends at a place that is not known
G0 Z1.
M5
M30
%
