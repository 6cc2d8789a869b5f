%
O1 (of four shifts one is taken back)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G92 X1. ; expect offset-shift-left warning: the shift of G92 still stands at the end && the program ends at line 11 without taking it back && G92.1 before the end
G52 Y1.
G10 L2 P2 X5. ; expect offset-shift-left warning: the shift of G10 L2 P2 still stands at the end && the program ends at line 11 without taking it back && the old offset data written back before the end
G10 L2 P3 X6. ; expect offset-shift-left warning: the shift of G10 L2 P3 still stands at the end && the program ends at line 11 without taking it back && the old offset data written back before the end
G52 Y0.
M30
%
