%
O1 (no G43 after the change)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
Z1. ; expect length-offset-missing error: tool 3 && G43 H3 before this move && put in the spindle at line 5, no G43 since
M30
%
