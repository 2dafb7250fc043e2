/* edit.h: the edits that turn one panel into the next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each takes a panel and gives a new one (transfer full) that keeps the rules of record.h and
 * panel.h and shares what did not change. Ids must be of this panel: an unknown one is a
 * PP_PANEL_ERROR of code REFERENCE, as is taking away what is still needed; a value out of range is
 * code VALUE; too many of something is code LIMIT. On error nothing changes and NULL is returned.
 * Edits on several placements keep their stacking order among themselves.
 */
#pragma once

#include "panel/panel.h"
#include "panel/vase.h"

G_BEGIN_DECLS

/* Where a placement goes. */
typedef struct
{
  double   x;        /* mm, panel frame, of the piece's origin */
  double   y;
  double   rotation; /* degrees clockwise */
  gboolean mirrored;
} PpPose;

/* On top of the stack. `id` (nullable, transfer full): the new placement's id. */
PpPanel *pp_edit_place             (const PpPanel *panel, const char *piece, PpPose pose,
                                    char **id, GError **error);
PpPanel *pp_edit_set_pose          (const PpPanel *panel, const char *placement, PpPose pose,
                                    GError **error);
/* All of `placements` (ended by NULL) by (dx, dy) mm. */
PpPanel *pp_edit_move              (const PpPanel *panel, const char * const *placements,
                                    double dx, double dy, GError **error);
/* Each turned by `degrees` and carried round `centre`. */
PpPanel *pp_edit_turn              (const PpPanel *panel, const char * const *placements,
                                    PpPoint centre, double degrees, GError **error);
/* Each reflected in the upright line x = `axis`. */
PpPanel *pp_edit_mirror            (const PpPanel *panel, const char * const *placements,
                                    double axis, GError **error);
/* One step up or down in the stack (past one neighbour that is not itself in the list). At the
 * end of the stack the panel comes back as it was. */
PpPanel *pp_edit_lift              (const PpPanel *panel, const char * const *placements,
                                    GError **error);
PpPanel *pp_edit_lower             (const PpPanel *panel, const char * const *placements,
                                    GError **error);
/* To stack place `index`, counted from the bottom in the stack without it. */
PpPanel *pp_edit_restack           (const PpPanel *panel, const char *placement, guint index,
                                    GError **error);
/* `name` NULL takes them out of their group; "" is not a name. */
PpPanel *pp_edit_group             (const PpPanel *panel, const char * const *placements,
                                    const char *name, GError **error);
/* A group name that no placement has yet, "group-3"; (transfer full). */
char    *pp_edit_new_group_name    (const PpPanel *panel);
/* Also out of the plan and the quieted findings. */
PpPanel *pp_edit_remove            (const PpPanel *panel, const char * const *placements,
                                    GError **error);
/* Copies on top of the stack, moved by (dx, dy), in the same group and pocket, not pinned and not
 * glued. `ids` (nullable, transfer full): theirs, in the order given. */
PpPanel *pp_edit_duplicate         (const PpPanel *panel, const char * const *placements,
                                    double dx, double dy, char ***ids, GError **error);
/* The placement becomes one of another tray piece, in the same pose and stack place. What takes the
 * place of a stem and is none stands in no pocket. */
PpPanel *pp_edit_swap              (const PpPanel *panel, const char *placement,
                                    const char *piece, GError **error);
PpPanel *pp_edit_pin               (const PpPanel *panel, const char * const *placements,
                                    gboolean pinned, GError **error);
/* In the pocket of a fused part, or out of any (NULL). */
PpPanel *pp_edit_set_pocket        (const PpPanel *panel, const char *placement,
                                    const char *fused, GError **error);

/* A piece added to the tray; its id is made new where `piece` has one that is taken. */
PpPanel *pp_edit_add_piece         (const PpPanel *panel, const PpPiece *piece,
                                    char **id, GError **error);
/* In place of the tray piece with the same id. */
PpPanel *pp_edit_set_piece         (const PpPanel *panel, const PpPiece *piece, GError **error);
/* REFERENCE if one is placed. */
PpPanel *pp_edit_remove_piece      (const PpPanel *panel, const char *piece, GError **error);

PpPanel *pp_edit_set_background    (const PpPanel *panel, const PpBackground *background,
                                    GError **error);
/* Adds it, or puts it in place of the one with the same id. */
PpPanel *pp_edit_set_fused         (const PpPanel *panel, const PpFused *fused, GError **error);
/* Stems in its pocket stay where they are, out of the pocket. */
PpPanel *pp_edit_remove_fused      (const PpPanel *panel, const char *fused, GError **error);
/* With its insert and the stems in its pocket, by (dx, dy) mm. */
PpPanel *pp_edit_move_fused        (const PpPanel *panel, const char *fused, double dx, double dy,
                                    GError **error);
/* A jug that suits the glass, in the middle and near the lower edge, with a pocket where there is
 * room for one. `id` (nullable, transfer full): the fused part's. */
PpPanel *pp_edit_fuse_vase         (const PpPanel *panel, const char *name, char **id,
                                    GError **error);
/* A placed piece becomes a fused part of its thickness and glass; `outline` is that of the
 * placement in the panel frame. `id` (nullable, transfer full): the fused part's. */
PpPanel *pp_edit_fuse_piece        (const PpPanel *panel, const char *placement,
                                    const PpOutline *outline, char **id, GError **error);
/* Made from other measures, its foot where it was; of kind OWN the outline it has is stretched to
 * height and widest. A pocket that is as large as the vase lets it be stays so, and is cut anew for
 * another kind; else the insert stays as wide and deep as it is. */
PpPanel *pp_edit_set_vase          (const PpPanel *panel, const char *fused, const PpVase *vase,
                                    GError **error);
/* A pocket in the middle, mm from the top of the fused part; NAN for both: the largest that fits,
 * or VALUE where none does. An insert of another shape than a slot is stretched to that. */
PpPanel *pp_edit_cut_pocket        (const PpPanel *panel, const char *fused, double width,
                                    double depth, GError **error);
/* Stems in it stay where they are. */
PpPanel *pp_edit_close_pocket      (const PpPanel *panel, const char *fused, GError **error);
/* Adds it, or puts it in place of the one with the same id. */
PpPanel *pp_edit_set_hole          (const PpPanel *panel, const PpHole *hole, GError **error);
/* The same for a hole that is there, by hand: a wire of a set length that ends in it, and is not
 * knotted, keeps its slack. */
PpPanel *pp_edit_move_hole         (const PpPanel *panel, const PpHole *hole, GError **error);
/* REFERENCE if the wire ends in it. */
PpPanel *pp_edit_remove_hole       (const PpPanel *panel, const char *hole, GError **error);
/* NULL takes the wire off. */
PpPanel *pp_edit_set_wire          (const PpPanel *panel, const PpWire *wire, GError **error);
PpPanel *pp_edit_set_display       (const PpPanel *panel, const PpDisplay *display,
                                    GError **error);
/* Cannot fail. */
PpPanel *pp_edit_set_units         (const PpPanel *panel, PpUnits units);
/* Any of them NULL: as it is. Cannot fail. */
PpPanel *pp_edit_set_titles        (const PpPanel *panel, const char *title, const char *maker,
                                    const char *note);
/* The order of gluing that the maker has accepted: jobs ended by NULL, "knot:left" or a placement's
 * id. NULL: none, the shortest will do. */
PpPanel *pp_edit_set_order         (const PpPanel *panel, const char * const *jobs,
                                    GError **error);
/* "I know": keeps a finding quiet, or lets it speak again. */
PpPanel *pp_edit_set_quiet         (const PpPanel *panel, const char *code,
                                    const char * const *about, gboolean quiet, GError **error);
/* Sets PP_PANEL_ERROR_REFERENCE about an id that is not there, and returns NULL. */
gpointer pp_edit_refuse_unknown    (const char *id, GError **error);
/* A free id with this prefix, "p12"; (transfer full). */
char    *pp_edit_new_id            (const PpPanel *panel, const char *prefix);

G_END_DECLS
