%
O1 (the sheet does not say how a number without a point is read)
G21 G90 G17 G94
G54
G0 X0 Y0 Z1. ; not checked missing-decimal-point: machine.control.decimal_point is not on the sheet
G1 X10 F100
M30
%
