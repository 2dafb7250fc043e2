/* members.c: the members of a JSON object, by name and type, with the place in every complaint.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/members.h"

#include "file/file-error.h"
#include "file/json-append.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/shown.h"

gboolean
pp_reader_failed (PpReader *self)
{
  return self->error != NULL;
}

void
pp_reader_complain (PpReader   *self,
                    int         code,
                    const char *path,
                    const char *format,
                    ...)
{
  g_autofree char *text = NULL;
  va_list args;

  if (self->error != NULL)
    return;
  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  self->error = g_error_new (PP_FILE_ERROR, code, "%s: %s", *path != '\0' ? path : "$", text);
}

void
pp_reader_take (PpReader   *self,
                const char *path,
                GError     *error)
{
  const char *dot = *path != '\0' ? "." : "";
  int code;

  if (error == NULL)
    return;
  code = g_error_matches (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT) ? PP_FILE_ERROR_LIMIT
                                                                       : PP_FILE_ERROR_VALUE;
  if (self->error == NULL)
    self->error = g_error_new (PP_FILE_ERROR, code, "%s%s%s", path, dot, error->message);
  g_error_free (error);
}

void
pp_members_init (PpMembers  *self,
                 PpReader   *reader,
                 JsonNode   *node,
                 const char *path)
{
  *self = (PpMembers) { .reader = reader, .path = g_strdup (path) };
  self->taken = g_hash_table_new (g_str_hash, g_str_equal);
  if (pp_reader_failed (reader))
    return;
  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    self->object = json_node_get_object (node);
  else
    pp_reader_complain (reader, *path != '\0' ? PP_FILE_ERROR_VALUE : PP_FILE_ERROR_FORMAT, path,
                        _("must be an object."));
}

void
pp_members_clear (PpMembers *self)
{
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->taken, g_hash_table_unref);
}

char *
pp_members_dup_rest (PpMembers *self)
{
  g_autoptr (GList) names = NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (self->object == NULL)
    return NULL;
  names = json_object_get_members (self->object);
  for (GList *l = names; l != NULL; l = l->next)
    if (!g_hash_table_contains (self->taken, l->data))
      {
        if (text->len > 0)
          g_string_append (text, ", ");
        pp_json_append_string (text, l->data);
        g_string_append (text, ": ");
        pp_json_append_node (text, json_object_get_member (self->object, l->data));
      }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

char *
pp_members_dup_path (PpMembers  *self,
                     const char *name)
{
  return g_strconcat (self->path, *self->path != '\0' ? "." : "", name, NULL);
}

static void
complain (PpMembers  *self,
          const char *name,
          const char *text)
{
  g_autofree char *path = pp_members_dup_path (self, name);

  pp_reader_complain (self->reader, PP_FILE_ERROR_VALUE, path, "%s", text);
}

JsonNode *
pp_members_get (PpMembers  *self,
                const char *name,
                PpNeed      need)
{
  JsonNode *node;

  if (self->object == NULL || pp_reader_failed (self->reader))
    return NULL;
  g_hash_table_add (self->taken, (char *) name);
  node = json_object_get_member (self->object, name);
  if (node == NULL && need == PP_MUST_HAVE)
    {
      g_autofree char *path = pp_members_dup_path (self, name);

      pp_reader_complain (self->reader, PP_FILE_ERROR_FORMAT, path,
                          _("is missing and must be given."));
    }
  return node;
}

gboolean
pp_json_is_number (JsonNode *node)
{
  return node != NULL && JSON_NODE_HOLDS_VALUE (node)
         && (json_node_get_value_type (node) == G_TYPE_INT64
             || json_node_get_value_type (node) == G_TYPE_DOUBLE);
}

static void
take_double (PpMembers  *self,
             const char *name,
             JsonNode   *node,
             double     *value)
{
  if (pp_json_is_number (node))
    *value = json_node_get_double (node);
  else
    complain (self, name, _("must be a number."));
}

void
pp_members_get_double (PpMembers  *self,
                       const char *name,
                       PpNeed      need,
                       double     *value)
{
  JsonNode *node = pp_members_get (self, name, need);

  if (node != NULL)
    take_double (self, name, node, value);
}

void
pp_members_get_double_or_null (PpMembers  *self,
                               const char *name,
                               double     *value)
{
  JsonNode *node = pp_members_get (self, name, PP_MAY_LACK);

  if (node == NULL)
    return;
  if (JSON_NODE_HOLDS_NULL (node))
    *value = NAN;
  else
    take_double (self, name, node, value);
}

void
pp_members_get_count (PpMembers  *self,
                      const char *name,
                      guint      *value)
{
  JsonNode *node = pp_members_get (self, name, PP_MAY_LACK);
  double number;

  if (node == NULL)
    return;
  number = pp_json_is_number (node) ? json_node_get_double (node) : -1;
  if (number < 0 || number > G_MAXINT || number != floor (number))
    complain (self, name, _("must be a whole number, 0 or more."));
  else
    *value = (guint) number;
}

void
pp_members_get_boolean (PpMembers  *self,
                        const char *name,
                        gboolean   *value)
{
  JsonNode *node = pp_members_get (self, name, PP_MAY_LACK);

  if (node == NULL)
    return;
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    *value = json_node_get_boolean (node);
  else
    complain (self, name, _("must be true or false."));
}

static gboolean
is_string (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
}

void
pp_members_get_string (PpMembers   *self,
                       const char  *name,
                       PpNeed       need,
                       const char **value)
{
  JsonNode *node = pp_members_get (self, name, need);

  if (node == NULL)
    return;
  if (is_string (node))
    *value = json_node_get_string (node);
  else
    complain (self, name, _("must be a text."));
}

void
pp_members_get_string_or_null (PpMembers   *self,
                               const char  *name,
                               const char **value)
{
  JsonNode *node = pp_members_get (self, name, PP_MAY_LACK);

  if (node == NULL)
    return;
  if (JSON_NODE_HOLDS_NULL (node))
    *value = NULL;
  else if (is_string (node))
    *value = json_node_get_string (node);
  else
    complain (self, name, _("must be a text or null."));
}

void
pp_members_get_name (PpMembers  *self,
                     const char *name,
                     PpNeed      need,
                     PpFromName  from_name,
                     int        *value)
{
  const char *text = NULL;

  pp_members_get_string (self, name, need, &text);
  if (text != NULL && !from_name (text, value))
    {
      g_autofree char *path = pp_members_dup_path (self, name);
      g_autofree char *shown = pp_shown (text);

      pp_reader_complain (self->reader, PP_FILE_ERROR_VALUE, path,
                          _("“%s” is not one of the words that may stand here."), shown);
    }
}

JsonArray *
pp_members_get_array (PpMembers  *self,
                      const char *name,
                      PpNeed      need)
{
  JsonNode *node = pp_members_get (self, name, need);

  if (node == NULL)
    return NULL;
  if (JSON_NODE_HOLDS_ARRAY (node))
    return json_node_get_array (node);
  complain (self, name, _("must be a list."));
  return NULL;
}

gboolean
pp_members_enter (PpMembers  *self,
                  const char *name,
                  PpNeed      need,
                  PpMembers  *child)
{
  JsonNode *node = pp_members_get (self, name, need);
  g_autofree char *path = pp_members_dup_path (self, name);

  if (node == NULL || (need == PP_MAY_BE_NULL && JSON_NODE_HOLDS_NULL (node)))
    return FALSE;
  pp_members_init (child, self->reader, node, path);
  return TRUE;
}

const char **
pp_members_get_strings (PpMembers  *self,
                        const char *name,
                        PpNeed      need)
{
  g_autoptr (GPtrArray) strings = g_ptr_array_new ();
  JsonArray *array = pp_members_get_array (self, name, need);

  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);

      if (is_string (node))
        g_ptr_array_add (strings, (char *) json_node_get_string (node));
      else
        complain (self, name, _("must be a list of texts."));
    }
  g_ptr_array_add (strings, NULL);
  return (const char **) g_ptr_array_free (g_steal_pointer (&strings), FALSE);
}
