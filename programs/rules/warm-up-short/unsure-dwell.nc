%
O1 (a dwell without unit: a warm-up in seconds, none in milliseconds)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S20000 M3
G4 P700. ; not checked warm-up-short: the unit of a dwell is not known (machine.control.dwell would tell)
G1 X3. F60.
G0 Z1.
M5
M30
%
