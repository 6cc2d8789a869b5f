%
O1 (G49 takes the offset back before the tool is gone)
G21 G90 G17 G94
G54
G49
T3 M6
G0 X0. Y0.
G43 H3 Z1.
Z2.
G49
X1.
Z3. ; expect length-offset-missing error: tool 3 moves in Z after its length offset was taken back && put in the spindle at line 6, G49 or H0 at line 10 took G43 back && G43 H3 before this move
M30
%
