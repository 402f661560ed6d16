// Suppliers and what they offer: prices, packets, days of delivery; every figure can be changed where it stands.
//
// Does not know: which offer an order takes.
import { useState } from "preact/hooks";
import type { Money } from "../../../base/index.ts";
import { itemName } from "../../../language/index.ts";
import { nearItem, type Offer, readItem, type Supplier } from "../../../school/file/index.ts";
import { AddByName, Button, Choice, Field, Row, Table, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { AddThing } from "../cupboard/AddThing.tsx";
import { useAct } from "../cupboard/act.ts";
import { Entry } from "../cupboard/Entry.tsx";
import { itemKinds, supplyKinds, type Telling } from "../cupboard/itemKinds.ts";
import { readCount } from "../cupboard/readTyped.ts";
import { newId } from "../newId.ts";
import { readSum } from "./readSum.ts";
import { writtenSum } from "./writtenSum.ts";

export function Suppliers() {
  const say = useSay();
  const suppliers = useSession().classFile.value?.suppliers ?? [];
  return (
    <>
      <Row as="section" at={suppliers.length > 0 ? suppliers.length : undefined}>
        <h2>{say("orderPage.suppliersHeading")}</h2>
        <p class="note">{say("orderPage.suppliersHint")}</p>
      </Row>
      {suppliers.map((supplier) => (
        <OneSupplier key={supplier.id} supplier={supplier} />
      ))}
      <Row>
        <AddSupplier />
      </Row>
    </>
  );
}

/** More than a year of waiting is a slip (school/changes takes ten). */
const mostDays = 3650;

function OneSupplier({ supplier }: { readonly supplier: Supplier }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const decimals = session.classFile.value?.decimals ?? 2;
  const currency = session.classFile.value?.currency ?? "";
  const set = (change: Partial<Supplier>) => act({ kind: "set-supplier", supplier: { ...supplier, ...change } });
  const written = (sum: Money) => writtenSum(language, sum, decimals);
  const { name } = supplier;
  return (
    <Row at={say("orderPage.daysShort", { days: supplier.days })}>
      <h3>
        <bdi>{name}</bdi>
      </h3>
      <details>
        <summary>{say("orderPage.changeSupplier", { count: supplier.offers.length })}</summary>
        <div class="figures">
          <Entry label={say("orderPage.supplierName")} width="middle" value={name} onEnter={(text) => set({ name: text })} />
          <Entry
            label={say("orderPage.days")}
            width="short"
            keys="numeric"
            value={String(supplier.days)}
            onEnter={(typed) => {
              const days = readCount(typed, mostDays);
              return days === null ? say("orderPage.notDays", { found: typed }) : set({ days });
            }}
          />
          <Entry
            label={say("orderPage.shippingIn", { currency })}
            width="short"
            keys="decimal"
            value={written(supplier.shipping)}
            onEnter={(typed) => {
              const shipping = readSum(typed, decimals);
              return shipping === null ? say("orderPage.notASum", { found: typed }) : set({ shipping });
            }}
          />
          <Entry
            label={say("orderPage.freeFrom", { currency })}
            hint={say("orderPage.freeFromHint")}
            width="short"
            keys="decimal"
            value={supplier.freeFrom === null ? "" : written(supplier.freeFrom)}
            onEnter={(typed) => {
              if (typed.trim() === "") return set({ freeFrom: null });
              const freeFrom = readSum(typed, decimals);
              return freeFrom === null ? say("orderPage.notASum", { found: typed }) : set({ freeFrom });
            }}
          />
        </div>
        {supplier.offers.length > 0 && (
          <Table
            caption={say("orderPage.offersOf", { name })}
            phone="paragraphs"
            head={[
              { says: say("orderPage.packetOf") },
              { says: say("orderPage.inPacket"), numeric: true },
              { says: say("orderPage.price", { currency }), numeric: true },
              { says: say("orderPage.available"), numeric: true },
              { says: "" },
            ]}
          >
            {supplier.offers.map((offer) => (
              <OneOffer
                key={offer.id}
                offer={offer}
                written={written}
                onSet={(next) =>
                  set({ offers: supplier.offers.flatMap((o) => (o !== offer ? [o] : next === null ? [] : [next])) })
                }
              />
            ))}
          </Table>
        )}
        <AddOffer supplier={supplier} />
        <div class="acts">
          <TextLink onPress={() => act({ kind: "remove-supplier", id: supplier.id })}>
            {say("orderPage.removeSupplier", { name })}
          </TextLink>
        </div>
      </details>
    </Row>
  );
}

interface OneOfferProps {
  readonly offer: Offer;
  readonly written: (sum: Money) => string;
  /** Null takes it away. */
  readonly onSet: (offer: Offer | null) => string | null;
}

function OneOffer({ offer, written, onSet }: OneOfferProps) {
  const say = useSay();
  const session = useSession();
  const decimals = session.classFile.value?.decimals ?? 2;
  const { contains } = offer;
  const name =
    contains.kind === "item"
      ? itemName(session.language.value, contains.item, 2)
      : (session.shipped.value?.kits.get(contains.kit)?.name ?? contains.kit);
  return (
    <tr>
      <th scope="row">
        <bdi>{name}</bdi>
        <span class="note under">
          <bdi>{offer.id}</bdi>
        </span>
      </th>
      <td class="num" data-l={say("orderPage.inPacket")}>
        {contains.kind === "kit" ? (
          "1"
        ) : (
          <Entry
            label={say("orderPage.inPacketOf", { name })}
            hideLabel
            width="short"
            keys="numeric"
            value={String(contains.count)}
            onEnter={(typed) => {
              const count = readCount(typed);
              if (count === null || count === 0) return say("orderPage.notAPacket", { found: typed });
              return onSet({ ...offer, contains: { ...contains, count } });
            }}
          />
        )}
      </td>
      <td class="num" data-l={say("orderPage.price", { currency: session.classFile.value?.currency ?? "" })}>
        <Entry
          label={say("orderPage.priceOf", { name })}
          hideLabel
          width="short"
          keys="decimal"
          value={written(offer.price)}
          onEnter={(typed) => {
            const price = readSum(typed, decimals);
            return price === null ? say("orderPage.notASum", { found: typed }) : onSet({ ...offer, price });
          }}
        />
      </td>
      <td class="num" data-l={say("orderPage.available")}>
        <Entry
          label={say("orderPage.availableOf", { name })}
          hideLabel
          width="short"
          keys="numeric"
          value={offer.available === null ? "" : String(offer.available)}
          onEnter={(typed) => {
            if (typed.trim() === "") return onSet({ ...offer, available: null });
            const available = readCount(typed);
            return available === null ? say("cupboard.notACount", { found: typed }) : onSet({ ...offer, available });
          }}
        />
      </td>
      <td>
        <TextLink onPress={() => onSet(null)} label={say("cupboard.removeOf", { name })}>
          {say("cupboard.remove")}
        </TextLink>
      </td>
    </tr>
  );
}

/** What a shop may sell: all things, supplies, and what is counted one by one. */
const offeredKinds: ReadonlyMap<string, readonly Telling[]> = new Map<string, readonly Telling[]>([
  ...itemKinds,
  ...supplyKinds,
  ["board", []],
  ["usb-cable", []],
]);

function AddOffer({ supplier }: { readonly supplier: Supplier }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const decimals = session.classFile.value?.decimals ?? 2;
  const currency = session.classFile.value?.currency ?? "";
  const kits = [...(session.shipped.value?.kits.values() ?? [])];
  const [typed, setTyped] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const [kit, setKit] = useState<string | null>(null);
  const add = (contains: Offer["contains"], name: string): string | null => {
    const price = readSum(typed, decimals);
    if (price === null) {
      setProblem(say("orderPage.notASum", { found: typed }));
      return say("orderPage.priceFirst");
    }
    const id = newId(
      name,
      supplier.offers.map((offer) => offer.id),
      "offer",
    );
    const offer: Offer = { id, contains, price, available: null };
    const wrong = act({ kind: "set-supplier", supplier: { ...supplier, offers: [...supplier.offers, offer] } });
    if (wrong === null) {
      setTyped("");
      setProblem(null);
    }
    return wrong;
  };
  const [kitProblem, setKitProblem] = useState<string | null>(null);
  const price = (
    <Field
      label={say("orderPage.priceOfPacket", { currency })}
      width="short"
      keys="decimal"
      value={typed}
      onInput={(text) => {
        setTyped(text);
        setProblem(null);
      }}
      problem={problem}
    />
  );
  return (
    <details>
      <summary>{say("orderPage.addOffer")}</summary>
      <AddThing
        kinds={offeredKinds}
        countLabel={say("orderPage.inPacketLabel")}
        onAdd={({ item, count }) => {
          const key = readItem(item);
          if (key === null) return say("orderPage.noSuchThing", { found: item, near: nearItem(item) });
          if (count === 0) return say("orderPage.notAPacket", { found: "0" });
          return add({ kind: "item", item: key, count }, `${key} ${count}`);
        }}
      >
        {price}
      </AddThing>
      {kits.length > 0 && (
        <div class="acts">
          <Choice
            label={say("orderPage.orKit")}
            as="list"
            value={kit}
            none={say("cupboard.choose")}
            options={kits.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(id) => setKit(id === "" ? null : id)}
          />
          <Button
            notYet={kit === null ? say("orderPage.chooseKitFirst") : null}
            onPress={() => setKitProblem(kit === null ? null : add({ kind: "kit", kit }, kit))}
          >
            {say("orderPage.addKit")}
          </Button>
          {kitProblem && <p class="problem">{kitProblem}</p>}
        </div>
      )}
    </details>
  );
}

function AddSupplier() {
  const say = useSay();
  const act = useAct();
  const suppliers = useSession().classFile.value?.suppliers ?? [];
  return (
    <AddByName
      id="new-supplier"
      label={say("orderPage.newSupplier")}
      button={say("orderPage.addSupplier")}
      add={(name) => {
        const ids = suppliers.map((supplier) => supplier.id);
        const supplier = { id: newId(name, ids, "supplier"), name, shipping: 0, freeFrom: null, days: usualDays, offers: [] };
        return act({ kind: "set-supplier", supplier });
      }}
    />
  );
}

/** A week, until somebody says better (common practice, no source). */
const usualDays = 7;
