%
O1 (four hundred times a third of a hundredth less: what is lost in the end counts)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P50 L400
G90
M30
O50
G91 G1 X0.00333 F400. ; expect digits-below-resolution warning x400 | expect drift-in-incremental error @8 x397: X has drifted by -0.12 µm
M99
%
