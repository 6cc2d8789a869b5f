%
O1 (0.05 and 0.05 and 0.01 um too much)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G91
G1 X1.00005 F100. ; expect digits-below-resolution warning x3
X1.00005
X1.00009 ; expect drift-in-incremental error: X has drifted by 0.11 µm, allowed 0.1 µm && increments of whole 0.1 µm, or G90 && 3 rounded moves under G91, the first at line 7
G90
M30
%
