/* file-words.h: names of files: as suggested, as shown, as written, and what tells contents apart.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain functions without a widget. All strings are (transfer full).
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_PANEL_ENDING ".petalpane"
#define PP_PANEL_MEDIA_TYPE "application/x-petalpane+json"

/* A name for a file from a panel's title, that every file system takes: "Wall / window" gives
 * "Wall - window.petalpane". An empty title gives the name of an untitled panel. UTF-8. */
char *pp_file_name_suggest     (const char *title,
                                const char *ending);
/* The path itself if it ends so in upper or lower case, else with the ending. File name
 * encoding. */
char *pp_file_path_with_ending (const char *path,
                                const char *ending);
/* Last part of the path, to be shown. UTF-8. */
char *pp_file_name_show        (GFile      *file);
/* The same without PP_PANEL_ENDING. */
char *pp_file_name_show_bare   (GFile      *file);
/* Name of the folder it is in. */
char *pp_file_folder_show      (GFile      *file);
/* Tells contents of a file apart: equal only if every byte is. */
char *pp_file_content_of       (const void *bytes,
                                gsize       length);
/* The paper of pp_paper_parse() for a name of paper as the system knows it ("na_letter"); "a4" for
 * one that is not ours. (transfer none) */
const char *pp_file_paper_of   (const char *system_name);

G_END_DECLS
