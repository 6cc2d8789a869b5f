%
O1 (a dwell without unit behind block delete: whether there is a warm-up to leave out is not known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
/G4 P720. ; not checked warm-up-deletable: the unit of a dwell is not known (machine.control.dwell would tell)
M72
G0 X-3. Y0. Z1. ; not checked warm-up-deletable: a move begins or ends at a place that is not known
Z-0.02
G1 X3. F60. ; expect warm-up-missing error: fine cut with no valid warm-up: the spindle ran at least 13.504 s at 20000 rpm or more, 720 s asked
G0 Z1.
M5
M30
%
