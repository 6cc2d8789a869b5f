%
O1 (nobody wrote O7777)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P7777 ; expect subprogram-missing error: O7777 is called and not found && looked for in the program's own text, and beside it as O7777.nc, O7777, 7777.nc
M30
%
