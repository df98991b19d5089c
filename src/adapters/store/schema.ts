/** The rows of migrations/, as the query builder sees them. Instants are ISO 8601 text; JSON is text. */
export interface Schema {
  dish: { id: string; name: string; created_at: string; deleted_at: string | null };
  dish_version: { dish_id: string; version: number; label: string | null; text: string; choices: string; saved_at: string };
  own_food: { id: string; name: string; content: string };
  kept_value: { name: string; content: string };
}
