// run 200 ms
struct Node {
  int value;
  Node *next;
};
Node pool[6];
byte used = 0;
Node *make(int v, Node *next) {
  Node *n = &pool[used++];
  n->value = v;
  n->next = next;
  return n;
}
Node *insert(Node *list, int v) {
  if (!list || list->value >= v) return make(v, list);
  list->next = insert(list->next, v);
  return list;
}
void setup() {
  Serial.begin(115200);
  Node *list = nullptr;
  int in[] = {5, 1, 9, 3, 7};
  for (int v : in) list = insert(list, v);
  for (Node *n = list; n != NULL; n = n->next) {
    Serial.print(n->value);
    Serial.print(n->next ? "," : "\n");
  }
  Node **at = &list;
  while (*at && (*at)->value != 7) at = &(*at)->next;
  if (*at) *at = (*at)->next;
  int sum = 0;
  for (Node *n = list; n; n = n->next) sum += n->value;
  Serial.println(sum);
}
void loop() {}
