%
O1 (in between it depends on the way back)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G4 P2692.
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60. ; not checked measuring-overdue: begins or ends at a place that is not known
G0 Z1.
M5
M30
%
