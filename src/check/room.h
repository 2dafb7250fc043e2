/* room.h: memory for what is made of one placement after another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It is taken bit by bit and given back all at once, and the next placement has the same again,
 * warm in the caches. To get it anew of the system would cost an eighth of a check.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _PpRoom PpRoom;

PpRoom  *pp_room_new   (void);
void     pp_room_free  (PpRoom *self);
/* With anything in it, until all is given back. (transfer none) */
gpointer pp_room_take  (PpRoom *self,
                        gsize   bytes);
/* Gives back all that was taken. */
void     pp_room_clear (PpRoom *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpRoom, pp_room_free)

G_END_DECLS
