%
O1 (measured at one speed or another)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
M3
; expect below macro-unread warning: a condition
IF [#1 GT 2] S50000 ; not checked speed-changed-since-measuring: the speed of the spindle is not known
M72
S50000 M3
G4 P16.
G0 X-3. Y0. Z1. ; not checked speed-changed-since-measuring: a move begins or ends at a place that is not known
Z-0.005
G1 X3. Z-0.015 F400.
G0 Z1.
M5
M30
%
