/* stack.c: small panels for tests, settled, with their joints.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "stack.h"

#include "check/under.h"
#include "rings.h"

#define UNREF(type) ((GDestroyNotify) (void (*) (void)) type##_unref)

static void
take (GPtrArray *records,
      gpointer   record,
      GError    *error)
{
  g_assert_no_error (error);
  g_ptr_array_add (records, record);
}

void
test_draft_init (TestDraft *self,
                 double     width,
                 double     height,
                 double     thickness)
{
  PpBackground back = pp_background_draft ();

  *self = (TestDraft) {
    .panel = pp_panel_draft (),
    .wire = pp_wire_draft (),
    .display = pp_display_draft (),
    .adhesive = pp_adhesive_draft (),
  };
  self->panel.fused = g_ptr_array_new_with_free_func (UNREF (pp_fused));
  self->panel.holes = g_ptr_array_new_with_free_func (UNREF (pp_hole));
  self->panel.tray = g_ptr_array_new_with_free_func (UNREF (pp_piece));
  self->panel.placements = g_ptr_array_new_with_free_func (UNREF (pp_placement));
  back.width = width;
  back.height = height;
  back.thickness = thickness;
  test_draft_set_back (self, &back);
}

void
test_draft_set_back (TestDraft          *self,
                     const PpBackground *back)
{
  g_autoptr (GError) error = NULL;
  const PpBackground *old = self->panel.background; /* may lend `back` its strings */

  self->panel.background = pp_background_new (back, &error);
  g_assert_no_error (error);
  pp_background_unref (old);
}

void
test_draft_add_hole (TestDraft  *self,
                     const char *id,
                     double      x,
                     double      y,
                     double      diameter)
{
  PpHole hole = pp_hole_draft ();
  g_autoptr (GError) error = NULL;

  hole.id = id;
  hole.x = x;
  hole.y = y;
  hole.diameter = diameter;
  take (self->panel.holes, pp_hole_new (&hole, &error), error);
}

void
test_draft_add_wire (TestDraft *self,
                     double     length)
{
  self->wire.from = "a";
  self->wire.to = "b";
  self->wire.length = length;
}

void
test_draft_add_piece (TestDraft     *self,
                      const char    *id,
                      const char    *outline,
                      double         thickness,
                      double         mass,
                      const PpPiece *draft)
{
  PpPiece piece = draft != NULL ? *draft : pp_piece_draft ();
  g_autoptr (PpOutline) ring = test_outline (outline);
  g_autoptr (GError) error = NULL;

  piece.id = id;
  piece.outline = ring;
  piece.thickness = thickness;
  piece.mass = mass;
  piece.count = 99;
  take (self->panel.tray, pp_piece_new (&piece, &error), error);
}

void
test_draft_place (TestDraft  *self,
                  const char *id,
                  const char *piece,
                  double      x,
                  double      y)
{
  PpPlacement placement = pp_placement_draft ();
  g_autoptr (GError) error = NULL;

  placement.id = id;
  placement.piece = piece;
  placement.x = x;
  placement.y = y;
  take (self->panel.placements, pp_placement_new (&placement, &error), error);
}

void
test_draft_add_fused (TestDraft  *self,
                      const char *id,
                      const char *outline,
                      double      thickness,
                      double      density)
{
  PpFused fused = pp_fused_draft ();
  g_autoptr (PpOutline) ring = test_outline (outline);
  g_autoptr (GError) error = NULL;

  fused.id = id;
  fused.outline = ring;
  fused.thickness = thickness;
  fused.glass.density = density;
  take (self->panel.fused, pp_fused_new (&fused, &error), error);
}

static PpPanel *
make_panel (TestDraft *draft)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpWire) wire = NULL;
  g_autoptr (PpDisplay) display = pp_display_new (&draft->display, &error);
  g_autoptr (PpAdhesive) adhesive = pp_adhesive_new (&draft->adhesive, &error);
  PpPanel *panel;

  if (*draft->wire.from != '\0')
    wire = pp_wire_new (&draft->wire, &error);
  g_assert_no_error (error);
  draft->panel.wire = wire;
  draft->panel.display = display;
  draft->panel.adhesive = adhesive;
  panel = pp_panel_new (&draft->panel, &error);
  g_assert_no_error (error);
  pp_background_unref (draft->panel.background);
  g_ptr_array_unref (draft->panel.fused);
  g_ptr_array_unref (draft->panel.holes);
  g_ptr_array_unref (draft->panel.tray);
  g_ptr_array_unref (draft->panel.placements);
  return panel;
}

static void
settle (TestStack *self)
{
  g_autoptr (PpRoom) room = pp_room_new ();

  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      g_autoptr (PpBed) bed = pp_under_make_bed (self->scene, self->rests, i, room);

      self->rests[i] = pp_rest_new (self->scene, self->rests, i, bed);
      self->joints[i] = pp_joint_new (self->scene, bed, self->rests[i]);
      pp_room_clear (room);
    }
}

TestStack *
test_stack_new (TestDraft *draft)
{
  TestStack *self = g_new0 (TestStack, 1);

  self->panel = make_panel (draft);
  self->scene = pp_scene_new (self->panel, NULL);
  self->rests = g_new0 (PpRest *, self->scene->n_bodies);
  self->joints = g_new0 (PpJoint *, self->scene->n_bodies);
  settle (self);
  pp_joints_take_loads (self->joints, self->rests, self->scene);
  self->mass = pp_mass_of (self->scene, self->rests, self->joints);
  return self;
}

void
test_stack_free (TestStack *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      pp_rest_unref (self->rests[i]);
      pp_joint_unref (self->joints[i]);
    }
  g_free (self->rests);
  g_free (self->joints);
  pp_scene_unref (self->scene);
  pp_panel_unref (self->panel);
  g_free (self);
}
