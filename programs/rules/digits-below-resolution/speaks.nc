%
O1 (a fifth digit after the point, under a resolution of 0.1 um)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1.00005 F100. ; expect digits-below-resolution warning @4: X1.00005 is stored as 1.0001 mm, error 0.05 µm && no digit finer than 0.1 µm && the control keeps whole increments of 0.1 µm (machine.resolution)
M30
%
