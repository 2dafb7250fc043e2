/* say-hang.c: reads cases of holes, wire and mass, and says how each hangs, for
 * tests/reference/hang.py.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line in is "ax ay bx by length x y newtons"; a line out "middle_tilt t t, has_level hook hook
 * t t, friction, self_levelling, n slips..." apart by blanks, "nan" for what is not given.
 */
#include "check/hang.h"

#include "stack.h"

#include <stdio.h>

static void
say (const PpHang *self)
{
  printf ("%.17g %.17g %.17g %d %.17g %.17g %.17g %.17g %.17g %d %u", self->middle_tilt,
          self->middle_tension[0], self->middle_tension[1], self->has_level, self->level_hook.x,
          self->level_hook.y, self->level_tension[0], self->level_tension[1],
          self->friction_needed, self->self_levelling, self->n_slips_to);
  for (guint i = 0; i < self->n_slips_to; i++)
    printf (" %.17g", self->slips_to[i]);
  printf ("\n");
}

int
main (int    argc,
      char **argv)
{
  double ax, ay, bx, by, length, x, y, newtons;

  while (scanf ("%lf %lf %lf %lf %lf %lf %lf %lf", &ax, &ay, &bx, &by, &length, &x, &y, &newtons)
         == 8)
    {
      TestDraft draft;
      g_autoptr (TestStack) stack = NULL;
      const PpMass mass = { newtons * 1000 / PP_GRAVITY, x, y, -3 };
      PpHang hang;

      test_draft_init (&draft, 300, 400, 6);
      test_draft_add_hole (&draft, "a", ax, ay, 6);
      test_draft_add_hole (&draft, "b", bx, by, 6);
      test_draft_add_wire (&draft, length);
      stack = test_stack_new (&draft);
      pp_hang_init (&hang, stack->scene, &mass);
      say (&hang);
    }
  return 0;
}
