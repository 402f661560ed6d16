// run 600 ms
class Account {
 public:
  enum Kind { CHILD, ADULT };
  static const int LIMIT = 100;
  Account() : Account("nobody", CHILD) {}
  Account(const char *n, Kind k, long start = 0) : name(n), kind(k), balance(start) { made++; }
  bool pay(long amount) {
    if (amount > balance || (kind == CHILD && amount > LIMIT)) return false;
    balance -= amount;
    return true;
  }
  Account &put(long amount) { this->balance += amount; return *this; }
  long left() const { return balance; }
  void show() const;
  static int made;
 private:
  const char *name;
  Kind kind;
  long balance;
};
int Account::made = 0;
void Account::show() const {
  Serial.print(name);
  Serial.print(kind == ADULT ? " adult " : " child ");
  Serial.println(balance);
}
Account a("Ada", Account::ADULT, 500), b;
Account list[2] = {Account("Ben", Account::CHILD, 70), Account()};
void setup() {
  Serial.begin(115200);
  Serial.println(a.pay(200));
  b.put(50).put(25);
  Serial.println(b.pay(101));
  a.show();
  b.show();
  for (Account &k : list) { k.put(1); k.show(); }
  Account *p = &list[0];
  p->pay(71);
  Serial.println(p->left());
  Serial.println(Account::made);
  Serial.println(Account::LIMIT);
}
void loop() {}
